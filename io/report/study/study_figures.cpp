#include "io/report/study/study_figures.h"

#include "io/chart/axis_choice.h"
#include "io/chart/chart_pictures.h"
#include "io/report/chart_data.h"
#include "io/report/html.h"
#include "io/report/study/share_charts.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace swale {

namespace {

constexpr std::size_t most_charts = 24, most_maps = 12;

void add_chart(LineChart chart, const std::string& caption, StudyFigures& figures) {
    const std::string name = fmt::format("chart-{}", figures.charts.size() + 1);
    if (figures.opening.empty()) {
        LineChart small = chart;
        small.width = 520;
        small.height = 330;
        figures.charts["opening"] = chart_data(small);
        figures.opening = figure(draw(small), caption, "opening");
    }
    figures.charts[name] = chart_data(chart);
    figures.section += figure(draw(chart), caption, name);
}

// "EP 800/4 6+3: the distance ..."; of a study of one chart its title says nothing more.
std::string caption_of(const std::string& heading, const StudyTable& table, const std::string& sentence) {
    return heading == table.title ? "T" + sentence.substr(1) : shortened(heading, 160) + ": " + sentence;
}

void left_out(std::size_t drawn, std::size_t all, const std::string& what, StudyFigures& figures) {
    if (drawn < all)
        figures.section +=
            paragraph(fmt::format("{} of {} {} are shown; swale chart draws them all from the database.", drawn, all, what));
}

void add_design_charts(const StudyTable& table, const ChartAxes& axes, const std::vector<ChartPoint>& points,
                       StudyFigures& figures) {
    std::vector<LineChart> charts;
    for (const ChartGroup& group : grouped(points, {axes.distance, axes.over, axes.lines}))
        if (auto chart = required_distance_chart(table, axes, group)) charts.push_back(*std::move(chart));
    for (std::size_t k = 0; k < std::min(charts.size(), most_charts); ++k)
        add_chart(charts[k],
                  caption_of(charts[k].title, table,
                             "the distance from which on every limit holds with its estimated error. No point: the shortest "
                             "distance of the study passes already, or none does."),
                  figures);
    left_out(std::min(charts.size(), most_charts), charts.size(), "design charts", figures);
}

void add_maps(const StudyTable& table, const ChartAxes& axes, const std::vector<ChartPoint>& points, StudyFigures& figures) {
    const std::vector<ChartGroup> groups = grouped(points, {axes.distance, axes.lift});
    std::size_t drawn = 0, tried = 0;
    for (const ChartGroup& group : groups) {
        if (drawn == most_maps) break;
        ++tried;
        const auto map = utilisation_map(table, axes, group);
        if (!map) continue;
        ++drawn;
        const std::string caption =
            caption_of(chart_heading(table, group), table,
                       "the share of the limit of edge tension that is used; broken line: the distance from which "
                       "on every limit holds.");
        figures.section += figure(*map, caption);
        if (figures.opening.empty()) figures.opening = figure(*map, caption);
    }
    left_out(drawn, tried < groups.size() ? groups.size() : drawn, "maps", figures);
}

}  // namespace

StudyFigures study_figures(const StudyRecord& record) {
    StudyFigures figures;
    const StudyTable& table = record.table;
    const bool over_distance = table.axis(AxisNames{}.distance) < table.axes.size() && table.axes.size() > 1;
    if (over_distance) {
        const ChartAxes axes = chart_axes(table, {});
        const std::vector<ChartPoint> points = chart_points(table, axes.distance);
        add_design_charts(table, axes, points, figures);
        add_maps(table, axes, points, figures);
    }
    if (figures.section.empty())
        for (const LineChart& chart : share_charts(record))
            add_chart(chart, "What is used of the limit nearest to be reached, its estimated error on top.", figures);
    if (figures.section.empty())
        figures.section = paragraph(
            "No chart can be drawn: that takes two solved cases that differ in one number alone, such as those of a full "
            "grid.");
    return figures;
}

}  // namespace swale
