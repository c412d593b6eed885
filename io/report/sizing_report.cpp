#include "io/report/sizing_report.h"

#include "io/picture/line_chart.h"
#include "io/report/html.h"
#include "io/terminal/sizing_section.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

/// Headroom over the distances tried.
LineChart headroom_chart(const Sizing& sizing) {
    std::vector<SizingStep> steps = sizing.steps;
    std::ranges::stable_sort(steps, {}, [](const SizingStep& step) { return step.layout.distance; });
    LineChart chart;
    chart.title = "Headroom over distance";
    chart.x_label = "distance from pulley to first full set";
    chart.x_unit = "mm";
    chart.y_label = "share of the binding limit that is left, errors taken off";
    chart.y_unit = "%";
    chart.height = 280;
    Series tried{"tried", {}, {}};
    for (const SizingStep& step : steps) {
        tried.x.push_back(step.layout.distance);
        tried.y.push_back(100 * step.headroom);
    }
    chart.series = {tried};
    chart.levels = {{"limit", 0, -INFINITY, INFINITY, true}};
    if (sizing.best) chart.uprights = {{"found", sizing.best->transition.layout.distance}};
    return chart;
}

bool distances_differ(const Sizing& sizing) {
    return std::ranges::any_of(sizing.steps, [&](const SizingStep& step) {
        return std::abs(step.layout.distance - sizing.steps.front().layout.distance) > 0.5;
    });
}

}  // namespace

ReportSection sizing_report(const Sizing& sizing, const SizingBounds& bounds) {
    std::string body = paragraph(well_set(sizing_headline(sizing, bounds)));
    if (bounds.aim == SizingAim::distance && distances_differ(sizing))
        body += figure(draw(headroom_chart(sizing)), "What every distance tried leaves of the limit that binds there.");
    if (bounds.aim != SizingAim::distance)
        body += html_table("Arrangements, best first", sizing_arrangement_rows(sizing), "rrlrll");
    const std::vector<TextRow> levers = lever_rows(sizing.levers);
    if (!levers.empty()) body += html_table("What a change does to what binds", levers, "llrrr");
    body += html_table("What was tried", sizing_history_rows(sizing), "rrrrlrl") + paragraph(sizing_effort(sizing));
    return {"sizing", "How it was sized", body};
}

}  // namespace swale
