#include "io/report/state_charts.h"

#include "io/report/along_chart.h"
#include "io/report/rolls_below.h"
#include "io/terminal/plain_text.h"
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

StateChart pressure_chart(const RunRecord& record, const StateResult& state) {
    const bool half = record.transition.settings.model == Symmetry::half;
    LineChart chart =
        across_chart(state, half ? 0 : -INFINITY, [](const SurfacePoint& point) { return point.contact_pressure; });
    std::erase_if(chart.series, [](const Series& series) { return series.name == "mid-transition"; });
    chart.title = "Pressure on the rolls' contact lines, " + state.name;
    chart.y_label = "largest pressure on the contact line";
    chart.y_unit = "MPa";
    chart.y_low = 0;
    for (const RollBelow& roll : rolls_below(record.transition))
        if (!half || roll.to > 0)
            chart.stretches.push_back({roll.name + " roll", half ? std::max(0.0, roll.from) : roll.from, roll.to});
    return {"pressure", "Pressure between belt and rolls along their contact lines; shaded: the rolls of a full set.", chart};
}

std::vector<Eigen::Vector2d> outline(const Roll& roll) {
    std::vector<Eigen::Vector2d> points;
    for (const auto& [along, out] : {std::pair(-1, -1), std::pair(1, -1), std::pair(1, 1), std::pair(-1, 1)}) {
        const Eigen::Vector3d corner = roll.centre + along * roll.half_length * roll.axis + out * roll.radius * roll.up;
        points.emplace_back(-corner.y(), corner.z());
    }
    return points;
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
