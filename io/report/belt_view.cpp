#include "io/report/belt_view.h"

#include "io/markup_text.h"
#include "io/picture/colour.h"
#include "io/report/packed_numbers.h"
#include "io/report/rolls_below.h"
#include "io/report/set_places.h"
#include "io/report/view_fields.h"
#include "io/verdict.h"

#include <cmath>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

constexpr size_t most_points = 10500;  // of half a belt, for one state of a page; of a whole one a third more

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

Thinned thinned(const BeltSurface& surface, bool half) {
    const int first = half ? surface.across / 2 : 0;
    const size_t allowed = half ? most_points : most_points * 4 / 3;
    int along = 1, across = 1;
    Thinned lines{every(1, 0, surface.along), every(1, first, surface.across)};
    while (lines.points() > allowed) {
        (along <= across ? along : across) += 1;
        lines = {every(along, 0, surface.along), every(across, first, surface.across)};
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

Json fields_of(const StateResult& state, const Thinned& lines) {
    Json fields = Json::object();
    for (const ViewField& field : view_fields()) {
        if (!field.exists(state)) continue;
        const FieldRange range = range_of(field, state);
        const ColourScale scale = colour_scale(range.low, range.high, field.both_signs);
        Json entry = packed_field(state.surface, lines, [&](size_t k) { return field.value(state, k); });
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

Json state_view(const RunRecord& record, const StateResult& state) {
    const bool half = record.transition.settings.model == Symmetry::half;
    const BeltSurface& surface = state.surface;
    const Thinned lines = thinned(surface, half);
    Json entry{{"name", with_visible_directions(state.name)}, {"excluded", state.excluded}};
    for (const int i : lines.along) entry["x"].push_back(surface.points[static_cast<size_t>(i) * surface.across].x);
    for (const int j : lines.across) entry["y"].push_back(surface.points[static_cast<size_t>(j)].y);
    entry["position"] = vectors(
        surface, lines, [&](size_t k) { return surface.points[k].position; }, 65535);
    entry["fields"] = fields_of(state, lines);
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
                        {"odd", field.mirrored_odd}});
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
    for (const StateResult& state : record.result.states) {
        if (!converged(state) || state.surface.points.empty()) continue;
        view["states"].push_back(state_view(record, state));
        view["states"].back()["limits"] = limits_of(record, state);
    }
    return view;
}

}  // namespace swale
