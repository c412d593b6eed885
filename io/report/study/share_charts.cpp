#include "io/report/study/share_charts.h"

#include "io/chart/chart_pictures.h"
#include "io/report/study/study_counts.h"
#include "io/terminal/plain_text.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace swale {

namespace {

constexpr std::size_t most_charts = 6, most_lines = 6;
using Labels = std::vector<std::string>;
/// Share by the number on the axis, of one line; lines by their label; charts by the labels of all further axes.
using Lines = std::map<std::string, std::map<double, double>>;

// axes.size() without one.
std::size_t axis_of_numbers(const StudyRecord& record) {
    std::size_t axis = 0;
    const auto numbers = [&](const ChartedCase& charted) { return std::isfinite(label_number(charted.labels[axis])); };
    while (axis < record.table.axes.size() && !std::ranges::all_of(record.table.cases, numbers)) ++axis;
    return axis;
}

LineChart chart_of(const StudyRecord& record, std::size_t over, const std::string& title, const Lines& lines) {
    const AxisWords words = axis_words(record.table.axes[over], record.table.cases.front().labels[over]);
    LineChart chart{title.empty() ? record.table.title : title, words.name, words.unit, "share of the limit used", "%", {}};
    for (const auto& [name, points] : lines) {
        if (points.size() < 2 || chart.series.size() == most_lines) continue;
        Series series{name.empty() ? "nearest limit" : shortened(name, 30), {}, {}};
        for (const auto& [x, y] : points) {
            series.x.push_back(x);
            series.y.push_back(100 * y);
        }
        chart.series.push_back(series);
    }
    chart.levels = {{"limit", 100, -INFINITY, INFINITY, true}};
    return chart;
}

std::string taken(Labels& labels, std::size_t axis) {
    return axis < labels.size() ? std::exchange(labels[axis], "") : "";
}

std::string joined(const Labels& labels) {
    std::string text;
    for (const std::string& label : labels)
        if (!label.empty()) text += (text.empty() ? "" : ", ") + shortened(label, 40);
    return text;
}

}  // namespace

std::vector<LineChart> share_charts(const StudyRecord& record) {
    const std::size_t over = axis_of_numbers(record), by = over == 0 ? 1 : 0;
    std::vector<std::pair<Labels, Lines>> groups;
    for (std::size_t k = 0; over < record.table.axes.size() && k < record.cases.size(); ++k) {
        const double share = share_used(record.table.cases[k]);
        if (!record.cases[k].solved() || !std::isfinite(share)) continue;
        Labels rest = record.table.cases[k].labels;
        const double x = label_number(taken(rest, over));
        const std::string line = taken(rest, by);
        auto group = std::ranges::find(groups, rest, &std::pair<Labels, Lines>::first);
        if (group == groups.end()) group = groups.insert(group, {rest, {}});
        group->second[line][x] = share;
    }
    std::vector<LineChart> charts;
    for (const auto& [labels, lines] : groups) {
        LineChart chart = chart_of(record, over, joined(labels), lines);
        if (!chart.series.empty() && charts.size() < most_charts) charts.push_back(std::move(chart));
    }
    return charts;
}

}  // namespace swale
