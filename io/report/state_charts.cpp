#include "io/report/state_charts.h"

#include "io/picture/colour.h"
#include "io/report/along_chart.h"
#include "io/report/set_places.h"
#include "io/report/view_fields.h"
#include "io/terminal/plain_text.h"
#include "mesh/idler_set.h"
#include "solver/screening.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

template <class Value>
LineChart across_chart(const StateResult& state, double from_y, Value value) {
    LineChart chart;
    chart.x_label = "across the flat belt from its centre line, +y";
    chart.x_unit = "mm";
    for (const CrossSection& section : state.across) {
        Series series{section.name, {}, {}};
        for (const SurfacePoint& point : section.points) {
            if (point.y < from_y) continue;
            series.x.push_back(point.y);
            series.y.push_back(value(point));
        }
        if (!series.x.empty()) chart.series.push_back(series);
    }
    return chart;
}

StateChart tension_chart(const RunRecord& record, const StateResult& state) {
    LineChart chart = across_chart(state, -INFINITY, [](const SurfacePoint& point) { return point.force[0]; });
    chart.title = "Tension across the belt, " + state.name;
    chart.y_label = "tension along, force per width";
    chart.y_unit = "N/mm";
    if (const auto rated = record.transition.belt.rated_tension)
        if (*rated < 2.5 * state.edge_tension_max.value)
            chart.levels = {{fmt::format("rated tension {} N/mm", significant(*rated)), *rated, -INFINITY, INFINITY}};
    for (const double junction : record.transition.layout.junctions())
        for (const double side : {-1.0, 1.0}) chart.uprights.push_back({"junction", side * junction});
    std::ranges::sort(chart.uprights, {}, &Upright::at);
    return {"tension-across", "Tension across the belt at mid-transition and over each set.", chart};
}

StateChart strain_chart(const RunRecord& record, const StateResult& state) {
    LineChart chart = across_chart(state, -INFINITY, [](const SurfacePoint& point) { return 100 * point.strain; });
    chart.title = "Longitudinal strain across the belt, " + state.name;
    chart.y_label = "longitudinal strain";
    chart.y_unit = "%";
    for (const double junction : record.transition.layout.junctions())
        for (const double side : {-1.0, 1.0}) chart.uprights.push_back({"junction", side * junction});
    std::ranges::sort(chart.uprights, {}, &Upright::at);
    return {"strain-across", "Longitudinal strain across the belt at mid-transition and over each set.", chart};
}

/// Rolls of a full set under the left half of the flat belt: what of it each roll can carry.
std::vector<Stretch> roll_stretches(const TransitionLayout& layout, double underside) {
    std::vector<Stretch> stretches;
    const std::vector<IdlerSet> sets = idler_sets(layout, 1);
    if (sets.empty() || sets.back().support == Support::held) return stretches;
    for (const SetRoll& roll : rolls_of(layout, sets.back(), underside)) {
        if (roll.side < 0) continue;
        const double begin = roll.side == 0 ? 0 : roll.facet.begin + layout.trough.roll_gap / 2;
        const double length = roll.side == 0 ? roll.roll.half_length : 2 * roll.roll.half_length;
        stretches.push_back({roll.name + " roll", begin, std::min(begin + length, layout.belt_width / 2)});
    }
    return stretches;
}

StateChart pressure_chart(const RunRecord& record, const StateResult& state) {
    LineChart chart = across_chart(state, 0, [](const SurfacePoint& point) { return point.contact_pressure; });
    std::erase_if(chart.series, [](const Series& series) { return series.name == "mid-transition"; });
    chart.title = "Pressure on the rolls' contact lines, " + state.name;
    chart.y_label = "largest pressure on the contact line";
    chart.y_unit = "MPa";
    chart.y_low = 0;
    chart.stretches = roll_stretches(record.transition.layout, record.transition.belt.section.underside);
    return {"pressure",
            "Pressure between belt and rolls along their contact lines, from the centre line to the edge; shaded: the rolls of "
            "a full set.",
            chart};
}

std::vector<Eigen::Vector2d> outline(const Roll& roll) {
    std::vector<Eigen::Vector2d> points;
    for (const auto& [along, out] : {std::pair(-1, -1), std::pair(1, -1), std::pair(1, 1), std::pair(-1, 1)}) {
        const Eigen::Vector3d corner = roll.centre + along * roll.half_length * roll.axis + out * roll.radius * roll.up;
        points.emplace_back(-corner.y(), corner.z());
    }
    return points;
}

GridField grid_field(const StateResult& state, const ViewField& field) {
    const BeltSurface& surface = state.surface;
    GridField grid{{}, {}, Eigen::MatrixXd(surface.along, surface.across)};
    for (int i = 0; i < surface.along; ++i) grid.x.push_back(surface.points[static_cast<size_t>(i) * surface.across].x);
    for (int j = 0; j < surface.across; ++j) grid.y.push_back(surface.points[static_cast<size_t>(j)].y);
    for (int i = 0; i < surface.along; ++i)
        for (int j = 0; j < surface.across; ++j)
            grid.values(i, j) = field.value(state, static_cast<size_t>(i) * surface.across + j);
    return grid;
}

}  // namespace

std::vector<StateChart> state_charts(const RunRecord& record, const StateResult& state) {
    std::vector<StateChart> charts{along_chart(record, state), tension_chart(record, state), strain_chart(record, state)};
    StateChart pressure = pressure_chart(record, state);
    if (!pressure.chart.stretches.empty()) charts.push_back(std::move(pressure));
    return charts;
}

std::vector<TroughShape> trough_shapes(const RunRecord& record, const StateResult& state) {
    std::vector<TroughShape> shapes;
    for (const CrossSection& section : state.across) {
        TroughShape shape{section.name, {}, {}};
        for (const SurfacePoint& point : section.points) shape.belt.emplace_back(-point.position.y(), point.position.z());
        for (const auto& [name, roll] : record.result.rolls)
            if (name.starts_with(section.name + " ")) shape.rolls.push_back(outline(roll));
        if (!shape.belt.empty()) shapes.push_back(std::move(shape));
    }
    return shapes;
}

std::vector<std::array<double, 4>> rolls_below(const RunRecord& record, const StateResult& state) {
    std::vector<std::array<double, 4>> boxes;
    const double radius = record.transition.layout.trough.roll_diameter / 2;
    const auto stretches = roll_stretches(record.transition.layout, record.transition.belt.section.underside);
    for (const SetPlace& set : set_places(state))
        for (const Stretch& roll : stretches) {
            const double from = roll.from > 0 ? roll.from : -roll.to;
            boxes.push_back({set.x - radius, from, set.x + radius, roll.to});
            if (roll.from > 0) boxes.push_back({set.x - radius, -roll.to, set.x + radius, -roll.from});
        }
    return boxes;
}

FieldMap strain_map(const RunRecord& record, const StateResult& state) {
    const ViewField& field = view_fields().front();
    const FieldRange range = range_of(field, state);
    FieldMap map{"Longitudinal strain on the flattened belt, " + state.name, field.name, field.unit, grid_field(state, field),
                 colour_scale(range.low, range.high, false)};
    for (const SetPlace& set : set_places(state)) map.sets.push_back({set.name, set.x});
    for (const double junction : record.transition.layout.junctions())
        for (const double side : {1.0, -1.0}) map.junctions.push_back({"junction", side * junction});
    map.rolls = rolls_below(record, state);
    const Reading& peak = state.edge_strain_max;
    map.peak = MapPoint{significant(100 * peak.value) + " % at the edge, the most", peak.x, peak.y};
    for (const Judgement& judgement : record.result.criteria)
        if (judgement.state == state.name && judgement.name == "edge strain" && judgement.limit)
            map.limit = Level{fmt::format("limit of the edge strain, {} %", significant(100 * *judgement.limit)),
                              100 * *judgement.limit};
    return map;
}

BarChart required_distances(const RunRecord& record) {
    const double distance = record.transition.layout.distance;
    BarChart chart{"Distance that each hand method asks for",    "distance from pulley to first full set", "mm", {}, distance,
                   fmt::format("this case, {:.0f} mm", distance)};
    for (const HandMethod& method : screen(record.transition).methods)
        if (method.minimum_distance)
            chart.bars.push_back({method.name, *method.minimum_distance, fmt::format("{:.0f} mm", *method.minimum_distance)});
    return chart;
}

}  // namespace swale
