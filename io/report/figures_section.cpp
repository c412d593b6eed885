#include "io/report/figures_section.h"

#include "io/picture/svg.h"
#include "io/report/belt_picture.h"
#include "io/report/chart_data.h"
#include "io/report/html.h"
#include "io/report/state_charts.h"
#include "io/report/strain_map.h"
#include "io/verdict.h"

#include <fmt/format.h>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

std::string chart_name(const StateChart& chart, size_t state) {
    return fmt::format("{}-{}", chart.id, state + 1);
}

template <class Function>
void for_each_shown(const RunRecord& record, Function function) {
    const auto& states = record.result.states;
    for (size_t i = 0; i < states.size(); ++i)
        if (converged(states[i]) && !states[i].surface.points.empty()) function(i, states[i]);
}

/// One block a state; the script shows one of them at a time.
std::string by_state(const RunRecord& record, const std::function<std::string(size_t, const StateResult&)>& content) {
    std::string text;
    for_each_shown(record, [&](size_t i, const StateResult& state) {
        text += fmt::format("<div class=\"of-state\" data-state=\"{}\">\n<h3>{}</h3>\n{}</div>\n", i, foreign(state.name),
                            content(i, state));
    });
    return text;
}

std::string charts_of(const RunRecord& record, size_t i, const StateResult& state) {
    std::string text;
    for (const StateChart& chart : state_charts(record, state))
        text += figure(draw(chart.chart), chart.caption, chart_name(chart, i));
    const auto shapes = trough_shapes(record, state);
    if (!shapes.empty())
        text += figure(
            draw(shapes, "Sections of the trough, " + state.name),
            "The belt's carcass at mid-transition and over each set with the rolls, seen from the pulley, +y on the left.");
    return text;
}

}  // namespace

std::string figures_section(const RunRecord& record) {
    std::string map = by_state(record, [&](size_t, const StateResult& state) {
        return figure(draw(strain_map(record, state)),
                      "Longitudinal strain on the belt laid flat. Lines across: sets, with their rolls as boxes; broken lines "
                      "along: junctions. Hatched, if anywhere: beyond the scale, next to what holds the belt, where strains "
                      "are singular.");
    });
    if (map.empty()) return section("figures", "Pictures", paragraph("No state has a solution to be shown."));
    return "<div id=\"choices\" class=\"live\" hidden></div>\n" +
           section("space", "The belt on its rolls",
                   "<div id=\"space-view\" class=\"live\" hidden></div>\n"
                   "<p class=\"still-note\">The belt can be turned here where a browser runs the page's script and has WebGL; "
                   "the picture at the top shows it at rest.</p>\n") +
           section("map", "The belt laid flat",
                   "<div id=\"map-view\" class=\"live\" hidden></div>\n<div class=\"still\">" + map + "</div>\n") +
           section("charts", "Along and across the belt",
                   by_state(record, [&](size_t i, const StateResult& state) { return charts_of(record, i, state); }));
}

Json charts_data(const RunRecord& record) {
    Json charts = Json::object();
    for_each_shown(record, [&](size_t i, const StateResult& state) {
        for (const StateChart& entry : state_charts(record, state)) charts[chart_name(entry, i)] = chart_data(entry.chart);
    });
    return charts;
}

}  // namespace swale
