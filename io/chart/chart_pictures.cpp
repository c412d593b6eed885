#include "io/chart/chart_pictures.h"

#include "io/chart/distance_map.h"
#include "io/picture/axes.h"
#include "io/picture/line_chart.h"
#include "io/terminal/plain_text.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace swale {

namespace {

constexpr int map_columns = 120;

void add_heading(const std::string& title, Drawing& drawing) {
    drawing.title = title;
    drawing.add(Words{{drawing.width - 4, 16}, shortened(title, 80), small_size, Anchor::end, ink::quiet});
}

Series& series_of(const std::string& name, LineChart& chart) {
    const auto found = std::ranges::find(chart.series, name, &Series::name);
    if (found != chart.series.end()) return *found;
    return chart.series.emplace_back(Series{name, {}, {}});
}

// In the order of x, which a study may list otherwise.
void sort_points(Series& series) {
    std::map<double, double> points;
    for (std::size_t k = 0; k < series.x.size(); ++k) points[series.x[k]] = series.y[k];
    series.x.clear();
    series.y.clear();
    for (const auto& [x, y] : points) {
        series.x.push_back(x);
        series.y.push_back(y);
    }
}

double edge_left(const std::vector<DistanceRow>& rows, double distance) {
    std::set<std::string> names;
    for (const DistanceRow& row : rows)
        for (const auto& [name, left] : row.left)
            if (name.starts_with(edge_criterion)) names.insert(name);
    double least = NAN;
    for (const std::string& name : names) {
        const auto left = left_at(rows, name, distance);
        if (!left) return NAN;
        least = std::fmin(least, *left);
    }
    return least;
}

using ByLift = std::map<double, const ChartPoint*>;

ByLift by_lift(const ChartAxes& axes, const ChartGroup& group) {
    ByLift lifts;
    for (const ChartPoint* point : group.points)
        if (axes.lift < point->labels.size() && std::isfinite(label_number(point->labels[axes.lift])))
            lifts[label_number(point->labels[axes.lift])] = point;
    return lifts;
}

/// Distances in belt widths that the rows of all lifts span.
std::vector<double> common_distances(const ByLift& lifts) {
    double from = 0, to = INFINITY;
    for (const auto& [lift, point] : lifts) {
        if (point->rows.size() < 2) return {};
        from = std::max(from, point->rows.front().distance / point->width);
        to = std::min(to, point->rows.back().distance / point->width);
    }
    std::vector<double> distances;
    for (int k = 0; k <= map_columns && from < to; ++k) distances.push_back(from + (to - from) * k / map_columns);
    return distances;
}

GridField edge_field(const ByLift& lifts) {
    GridField field{common_distances(lifts), {}, {}};
    field.values.resize(static_cast<Eigen::Index>(field.x.size()), static_cast<Eigen::Index>(lifts.size()));
    for (const auto& [lift, point] : lifts) {
        for (std::size_t i = 0; i < field.x.size(); ++i)
            field.values(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(field.y.size())) =
                1 - edge_left(point->rows,
                              std::clamp(field.x[i] * point->width, point->rows.front().distance, point->rows.back().distance));
        field.y.push_back(lift);
    }
    return field;
}

}  // namespace

std::string chart_heading(const StudyTable& table, const ChartGroup& group) {
    std::string text;
    for (std::size_t k = 0; k < group.labels.size(); ++k) {
        const std::string& label = group.labels[k];
        if (label.empty()) continue;
        const bool number = std::isfinite(label_number(label));
        text += (text.empty() ? "" : ", ") + (number ? axis_words(table.axes[k], label).name + " " : "") + label;
    }
    return text.empty() ? table.title : text;
}

std::optional<LineChart> required_distance_chart(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group) {
    const AxisWords over = axis_words(table.axes[axes.over], group.points.front()->labels[axes.over]);
    LineChart chart{chart_heading(table, group), over.name, over.unit, "required distance", "belt widths", {}};
    for (const ChartPoint* point : group.points) {
        const std::string name = axes.lines < point->labels.size() ? point->labels[axes.lines] : "all limits hold";
        const double x = label_number(point->labels[axes.over]);
        if (!point->required.distance || !std::isfinite(x)) continue;
        Series& series = series_of(name, chart);
        series.x.push_back(x);
        series.y.push_back(*point->required.distance / point->width);
    }
    std::ranges::for_each(chart.series, sort_points);
    if (std::ranges::none_of(chart.series, [](const Series& series) { return series.x.size() > 1; })) return {};
    chart.y_low = 0;
    return chart;
}

std::optional<Drawing> design_chart(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group) {
    const auto chart = required_distance_chart(table, axes, group);
    if (!chart) return {};
    Drawing drawing = draw(*chart);
    add_heading(chart->title, drawing);
    return drawing;
}

std::optional<Drawing> utilisation_map(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group) {
    const ByLift lifts = by_lift(axes, group);
    if (lifts.size() < 2 || lifts.size() < group.points.size()) return {};
    const GridField field = edge_field(lifts);
    if (field.x.empty() || !field.values.allFinite()) return {};
    const AxisWords lift = axis_words(table.axes[axes.lift], lifts.begin()->second->labels[axes.lift]);
    DistanceMap map{group.name, lift.name, lift.unit, field, {}};
    for (const auto& [height, point] : lifts)
        if (point->required.distance) map.required.emplace_back(*point->required.distance / point->width, height);
    Drawing drawing = draw(map);
    add_heading(chart_heading(table, group), drawing);
    return drawing;
}

}  // namespace swale
