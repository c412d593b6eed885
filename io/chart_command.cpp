#include "io/chart_command.h"

#include "io/chart/chart_pictures.h"
#include "io/picture/cairo_files.h"
#include "io/picture/svg.h"
#include "io/quantity.h"
#include "io/result_file.h"
#include "io/result_folder.h"
#include "io/state_file_stem.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "io/whole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <sstream>

namespace swale {

namespace {

std::set<std::string> kinds_of(const std::string& list) {
    std::set<std::string> kinds;
    std::istringstream words(list);
    for (std::string word; std::getline(words, word, ',');) {
        if (word != "svg" && word != "png" && word != "pdf" && list != "none")
            throw BadQuantity(
                fmt::format("--pictures: no kind of picture; given \"{}\"; allowed: svg, png, pdf with commas "
                            "between, or none",
                            word));
        kinds.insert(word);
    }
    return kinds;
}

/// Adds a drawing in every kind asked for, numbered from 1 among those of its sort.
struct Album {
    std::set<std::string> kinds;
    ResultFileList files = {};
    std::map<std::string, std::size_t> numbers = {};

    void add(const std::string& sort, const std::string& name, const Drawing& drawing) {
        const std::string stem = sort + state_file_stem(++numbers[sort], name).substr(5);  // behind "state"
        if (kinds.contains("svg")) files.push_back({stem + ".svg", svg(drawing)});
        if (kinds.contains("png")) files.push_back({stem + ".png", png(drawing)});
        if (kinds.contains("pdf")) files.push_back({stem + ".pdf", pdf(drawing, "2000-01-01T00:00:00Z")});  // same bytes
    }
};

ResultFileList files_of(const StudyTable& table, const ChartAxes& axes, const std::vector<ChartPoint>& points,
                        const std::set<std::string>& kinds) {
    Album album{kinds};
    album.files.push_back({"charts.csv", charts_csv(table, points, axes.distance)});
    album.files.push_back({"maps.csv", maps_csv(table, points, axes.distance)});
    for (const ChartGroup& group : grouped(points, {axes.distance, axes.over, axes.lines}))
        if (const auto drawing = design_chart(table, axes, group)) album.add("chart", group.name, *drawing);
    for (const ChartGroup& group : grouped(points, {axes.distance, axes.lift}))
        if (const auto drawing = utilisation_map(table, axes, group)) album.add("map", group.name, *drawing);
    return std::move(album.files);
}

// "passes at 0.75 widths already, ..." and its like count as one.
std::string sort_of(const ChartPoint& point) {
    if (point.required.distance) return point.required.until ? "found, fails again farther on" : "found";
    return point.required.binding.empty() && point.required.remark.starts_with("passes") ? "shorter than the study's shortest"
                                                                                         : "none passes or none is solved";
}

std::string counts(const std::vector<ChartPoint>& points) {
    std::map<std::string, int> sorts;
    for (const ChartPoint& point : points) ++sorts[sort_of(point)];
    std::vector<TextRow> rows{{"required distance", "points"}};
    for (const auto& [sort, count] : sorts) rows.push_back({sort, std::to_string(count)});
    return text_table(rows, "lr");
}

}  // namespace

int run_chart(const ChartRequest& request, std::ostream& answer) {
    const std::set<std::string> kinds = kinds_of(request.pictures);
    const StudyTable table = read_study_table(request.database);
    const ChartAxes axes = chart_axes(table, request.axes);
    const std::filesystem::path folder =
        request.out.empty() ? std::filesystem::path(request.database.stem().string() + "-charts") : request.out;
    prepare_result_folder(folder);
    const std::vector<ChartPoint> points = chart_points(table, axes.distance);
    const ResultFileList files = files_of(table, axes, points, kinds);
    for (const ResultFile& file : files) write_whole_file(folder / file.name, file.content);
    answer << wrapped(table.title) << fmt::format("{} cases, {} points of a chart\n\n", table.cases.size(), points.size())
           << counts(points) << "\n"
           << cautions << fmt::format("\ncharts.csv, maps.csv and {} pictures in {}\n", files.size() - 2, folder.string());
    return 0;
}

}  // namespace swale
