#include "io/report/belt_view.h"

#include "io/markup_text.h"
#include "io/picture/colour.h"
#include "io/report/packed_numbers.h"
#include "io/report/rolls_below.h"
#include "io/report/set_places.h"
#include "io/report/view_fields.h"
#include "io/verdict.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

constexpr size_t most_points_half = 10500, most_points_full = 14000, fewest_points = 1000;

/// What one of several states may take of a page, so that up to ten of them stay within 1.5 MB.
struct Share {
    size_t points = most_points_half;
    unsigned levels = 65535, mode_levels = 65535;  ///< of fields
};

// The page without its belts has some 840 kB, charts and still pictures 60 kB a state; a point takes 18 bytes, 12 on coarse
// steps.
Share share_of_page(size_t states, bool half) {
    const double bytes = std::max(0.0, 660e3 / static_cast<double>(states) - 60e3);
    const size_t most = half ? most_points_half : most_points_full;
    const auto fine = static_cast<size_t>(bytes / 18), coarse = static_cast<size_t>(bytes / 12);
    if (fine > 5000) return {std::min(fine, most)};
    return {std::max(coarse, fewest_points), 4095, 255};
}

/// Which lines of the surface's sample a page gets.
struct Thinned {
    std::vector<int> along, across;

    size_t points() const { return along.size() * across.size(); }
};

std::vector<int> every(int step, int from, int to) {
    std::vector<int> lines;
    for (int i = from; i < to; i += step) lines.push_back(i);
    if (lines.back() != to - 1) lines.push_back(to - 1);
    return lines;
}

// Behind `far` [mm] with a step of its own.
std::vector<int> lines_along(const BeltSurface& surface, int step, int far_step, double far) {
    int behind = 0;
    while (behind < surface.along && surface.points[static_cast<size_t>(behind) * surface.across].x <= far) ++behind;
    if (behind == 0 || behind == surface.along) return every(step, 0, surface.along);
    std::vector<int> lines = every(step, 0, behind);
    for (const int i : every(far_step, behind, surface.along)) lines.push_back(i);
    return lines;
}

// The far trough first, then all of it.
Thinned thinned(const BeltSurface& surface, bool half, size_t allowed, double far) {
    const int first = half ? surface.across / 2 : 0;
    int along = 1, far_step = 1, across = 1;
    Thinned lines{every(1, 0, surface.along), every(1, first, surface.across)};
    while (lines.points() > allowed) {
        (far_step < 2 * along ? far_step : along <= across ? along : across) += 1;
        lines = {lines_along(surface, along, far_step, far), every(across, first, surface.across)};
    }
    return lines;
}

template <class Value>
Json packed_field(const BeltSurface& surface, const Thinned& lines, Value value, unsigned levels = 65535) {
    std::vector<double> numbers;
    numbers.reserve(lines.points());
    for (const int i : lines.along)
        for (const int j : lines.across) numbers.push_back(value(static_cast<size_t>(i) * surface.across + j));
    return packed(numbers, lines.across.size(), levels);
}

Json vectors(const BeltSurface& surface, const Thinned& lines, const std::function<Eigen::Vector3d(size_t)>& vector,
             unsigned levels) {
    Json components = Json::array();
    for (int i = 0; i < 3; ++i)
        components.push_back(packed_field(
            surface, lines, [&](size_t k) { return vector(k)[i]; }, levels));
    return components;
}

Json fields_of(const RunRecord& record, const StateResult& state, const Thinned& lines, const Share& share) {
    const std::vector<double> held = held_lines(record.transition.layout, state);
    Json fields = Json::object();
    for (const ViewField& field : view_fields()) {
        if (!field.exists(state)) continue;
        const FieldRange range = range_of(field, state, held);
        const ColourScale scale = colour_scale(range.low, range.high, field.both_signs);
        const unsigned levels = field.id.starts_with("mode") ? share.mode_levels : share.levels;
        Json entry = packed_field(
            state.surface, lines, [&](size_t k) { return field.value(state, k); }, levels);
        entry["from"] = scale.low;
        entry["to"] = scale.high;
        entry["bands"] = scale.bands;
        fields[field.id] = entry;
    }
    return fields;
}

/// How far a mode moves along and across; up, it is one of the fields.
void add_mode(const char* name, const std::optional<BeltMode>& mode, const BeltSurface& surface, const Thinned& lines,
              Json& entry) {
    constexpr unsigned coarse = 255;  // only the shape is seen
    if (!mode) return;
    for (const int i : {0, 1})
        entry[name].push_back(packed_field(
            surface, lines, [&](size_t k) { return mode->motion[k][i]; }, coarse));
}

Json place(const std::string& field, const std::string& name, const Reading& reading, double factor) {
    if (!std::isfinite(reading.value)) return nullptr;
    return {{"field", field}, {"name", name}, {"value", reading.value * factor}, {"x", reading.x}, {"y", reading.y}};
}

Json state_view(const RunRecord& record, const StateResult& state, const Share& share) {
    const bool half = record.transition.settings.model == Symmetry::half;
    const BeltSurface& surface = state.surface;
    const TransitionLayout& layout = record.transition.layout;
    const Thinned lines = thinned(surface, half, share.points, layout.distance + layout.trough.spacing);
    Json entry{{"name", with_visible_directions(state.name)}, {"excluded", state.excluded}};
    for (const int i : lines.along) entry["x"].push_back(surface.points[static_cast<size_t>(i) * surface.across].x);
    for (const int j : lines.across) entry["y"].push_back(surface.points[static_cast<size_t>(j)].y);
    entry["thinned"] = lines.points() < static_cast<size_t>(surface.along) * (surface.across - (half ? surface.across / 2 : 0));
    entry["solution"] = {surface.along, surface.across};
    entry["position"] = vectors(
        surface, lines, [&](size_t k) { return surface.points[k].position; }, 65535);
    entry["fields"] = fields_of(record, state, lines, share);
    add_mode("motion_symmetric", state.mode_symmetric, surface, lines, entry);
    add_mode("motion_antisymmetric", state.mode_antisymmetric, surface, lines, entry);
    entry["peaks"] = {place("strain", "most at the edge", state.edge_strain_max, 100),
                      place("tension", "most at the edge", state.edge_tension_max, 1),
                      place("surface", "most", state.surface_strain_max, 100)};
    entry["sets"] = Json::array();
    for (const SetPlace& set : set_places(state)) entry["sets"].push_back({{"name", set.name}, {"x", set.x}});
    return entry;
}

Json rolls_view(const std::vector<NamedRoll>& rolls) {
    Json list = Json::array();
    const auto vector = [](const Eigen::Vector3d& v) { return Json{v.x(), v.y(), v.z()}; };
    for (const auto& [name, roll] : rolls)
        list.push_back({{"name", name},
                        {"centre", vector(roll.centre)},
                        {"axis", vector(roll.axis)},
                        {"up", vector(roll.up)},
                        {"radius", roll.radius},
                        {"half", roll.half_length},
                        {"end", roll.end_radius}});
    return list;
}

Json fields_view() {
    Json list = Json::array();
    for (const ViewField& field : view_fields())
        list.push_back({{"id", field.id},
                        {"name", field.name},
                        {"unit", field.unit},
                        {"signed", field.both_signs},
                        {"odd", field.mirrored_odd},
                        {"power", field.power},
                        {"widened", field.widened}});
    return list;
}

Json limits_of(const RunRecord& record, const StateResult& state) {
    Json limits = Json::object();
    for (const Judgement& judgement : record.result.criteria)
        if (judgement.state == state.name && judgement.name == "edge strain" && judgement.limit)
            limits["strain"] = *judgement.limit * 100;
    return limits;
}

}  // namespace

Json belt_view(const RunRecord& record) {
    const bool half = record.transition.settings.model == Symmetry::half;
    Json view{{"half", half}, {"fields", fields_view()}, {"rolls", rolls_view(record.result.rolls)}};
    const double radius = record.transition.layout.trough.roll_diameter / 2;
    view["rollsBelow"] = Json::array();
    for (const RollBelow& roll : rolls_below(record.transition))
        view["rollsBelow"].push_back({-radius, roll.from, radius, roll.to});
    view["junctions"] = record.transition.layout.junctions();
    view["distance"] = record.transition.layout.distance;
    view["states"] = Json::array();
    const auto shown = [](const StateResult& state) { return converged(state) && !state.surface.points.empty(); };
    const auto states = static_cast<size_t>(std::ranges::count_if(record.result.states, shown));
    const Share share = share_of_page(std::max<size_t>(1, states), half);
    for (const StateResult& state : record.result.states) {
        if (!shown(state)) continue;
        view["states"].push_back(state_view(record, state, share));
        view["states"].back()["limits"] = limits_of(record, state);
    }
    return view;
}

}  // namespace swale
