#include "io/report/along_chart.h"

#include "io/report/set_places.h"
#include "io/terminal/plain_text.h"
#include "solver/screening.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

Series line(const std::string& name, const std::vector<AlongRow>& rows, SurfacePoint AlongRow::*where) {
    Series series{name, {}, {}};
    for (const AlongRow& row : rows) {
        series.x.push_back(row.centre.x);
        series.y.push_back(100 * (row.*where).strain);
    }
    return series;
}

/// Whether no state of a given tension has a higher one, or none a lower one.
bool is_extreme(const TransitionCase& transition, const std::string& name, bool highest) {
    const TensionState* extreme = nullptr;
    for (const TensionState& state : transition.states)
        if (state.total && (extreme == nullptr || (highest ? *state.total > *extreme->total : *state.total < *extreme->total)))
            extreme = &state;
    return extreme != nullptr && extreme->name == name;
}

/// Methods that say the same share a line.
void add_levels(const std::vector<HandMethod>& methods, std::optional<double> HandMethod::*strain, const std::string& where,
                double distance, std::vector<Level>& levels) {
    for (const HandMethod& method : methods) {
        if (!(method.*strain)) continue;
        const double value = 100 * *(method.*strain);
        const auto same = std::ranges::find_if(
            levels, [&](const Level& level) { return std::abs(level.value - value) < 1e-3 * std::abs(value); });
        if (same != levels.end())
            same->label += " · " + method.name;
        else
            levels.push_back({where + " by " + method.name, value, 0, distance});
    }
}

std::vector<Level> hand_levels(const RunRecord& record, const StateResult& state) {
    const Screening screening = screen(record.transition);
    std::vector<Level> edge, centre;
    if (is_extreme(record.transition, state.name, true))
        add_levels(screening.methods, &HandMethod::edge_strain, "edge", record.transition.layout.distance, edge);
    if (is_extreme(record.transition, state.name, false))
        add_levels(screening.methods, &HandMethod::centre_strain, "centre", record.transition.layout.distance, centre);
    edge.insert(edge.end(), centre.begin(), centre.end());
    return edge;
}

void add_limit(const RunRecord& record, const StateResult& state, LineChart& chart) {
    for (const Judgement& judgement : record.result.criteria)
        if (judgement.state == state.name && judgement.name == "edge strain" && judgement.limit)
            chart.levels.push_back({fmt::format("edge strain limit {} %{}", significant(100 * *judgement.limit),
                                                judgement.advisory ? ", advisory" : ""),
                                    100 * *judgement.limit, -INFINITY, INFINITY, true});
}

/// Of what lies beyond the strip that readings leave out.
void set_range(const StateResult& state, LineChart& chart) {
    double low = INFINITY, high = -INFINITY;
    for (const Series& series : chart.series)
        for (size_t i = 0; i < series.x.size(); ++i) {
            if (series.x[i] < state.excluded) continue;
            low = std::min(low, series.y[i]);
            high = std::max(high, series.y[i]);
        }
    for (const Level& level : chart.levels) {
        low = std::min(low, level.value);
        high = std::max(high, level.value);
    }
    if (low <= high) chart.y_low = low, chart.y_high = high;
}

}  // namespace

StateChart along_chart(const RunRecord& record, const StateResult& state) {
    LineChart chart;
    chart.title = "Longitudinal strain along the belt, " + state.name;
    chart.x_label = "along the unstretched belt";
    chart.x_unit = "mm";
    chart.y_label = "longitudinal strain";
    chart.y_unit = "%";
    const double excluded = state.excluded;
    chart.series = {line("edge", state.along, &AlongRow::edge), line("junction", state.along, &AlongRow::junction),
                    line("centre", state.along, &AlongRow::centre)};
    chart.levels = hand_levels(record, state);
    add_limit(record, state, chart);
    for (const SetPlace& set : set_places(state)) chart.uprights.push_back({set.name, set.x});
    if (excluded > 0) chart.stretches = {{"", 0, excluded}};
    set_range(state, chart);
    return {"along",
            fmt::format(
                "Longitudinal strain of edge, junction and centre line. Shaded: the first {:.0f} mm, where the strain at the "
                "free corner of the section held on the pulley is singular; no reading is taken there. Broken lines: hand "
                "methods, over the distance that they take as strained evenly.",
                excluded),
            chart};
}

}  // namespace swale
