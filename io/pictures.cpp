#include "io/pictures.h"

#include "io/belt_glb.h"
#include "io/picture/cairo_files.h"
#include "io/picture/svg.h"
#include "io/report/belt_picture.h"
#include "io/report/state_charts.h"
#include "io/state_file_stem.h"
#include "io/verdict.h"

namespace swale {

namespace {

constexpr double picture_width = 900;

/// Adds a drawing in every kind asked for.
struct Album {
    const std::set<std::string>& kinds;
    const std::string& created;
    ResultFileList files = {};

    void add(const std::string& stem, const Drawing& drawing) {
        const std::filesystem::path base = std::filesystem::path("pictures") / stem;
        if (kinds.contains("png")) files.push_back({base.string() + ".png", png(drawing)});
        if (kinds.contains("svg")) files.push_back({base.string() + ".svg", svg(drawing)});
        if (kinds.contains("pdf")) files.push_back({base.string() + ".pdf", pdf(drawing, created)});
    }
};

void add_state(const RunRecord& record, const StateResult& state, const std::string& stem, Album& album) {
    album.add(stem + "-belt", belt_picture(record, state, picture_width));
    album.add(stem + "-map", draw(strain_map(record, state)));
    for (const StateChart& chart : state_charts(record, state)) album.add(stem + "-" + chart.id, draw(chart.chart));
    const auto shapes = trough_shapes(record, state);
    if (!shapes.empty()) album.add(stem + "-trough", draw(shapes, "Sections of the trough, " + state.name));
    if (album.kinds.contains("glb"))
        album.files.push_back({std::filesystem::path("pictures") / (stem + ".glb"), belt_glb(record, state)});
}

}  // namespace

const std::set<std::string>& picture_kinds() {
    static const std::set<std::string> kinds = {"png", "svg", "pdf", "glb"};
    return kinds;
}

ResultFileList pictures(const RunRecord& record, const std::set<std::string>& kinds, const std::string& created) {
    Album album{kinds, created};
    const BarChart distances = required_distances(record);
    if (!distances.bars.empty()) album.add("required-distance", draw(distances));
    for (size_t i = 0; i < record.result.states.size(); ++i) {
        const StateResult& state = record.result.states[i];
        if (converged(state) && !state.surface.points.empty())
            add_state(record, state, state_file_stem(i + 1, state.name), album);
    }
    return album.files;
}

}  // namespace swale
