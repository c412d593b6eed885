#include "io/chart/design_charts.h"

#include "io/csv_field.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace swale {

namespace {

using Labels = std::vector<std::string>;

// The labels without those of some axes.
Labels without(Labels labels, const std::vector<std::size_t>& axes) {
    for (const std::size_t axis : axes)
        if (axis < labels.size()) labels[axis].clear();
    return labels;
}

std::string joined(const Labels& labels) {
    std::string text;
    for (const std::string& label : labels)
        if (!label.empty()) text += (text.empty() ? "" : ", ") + label;
    return text;
}

void add_case(const ChartedCase& charted, ChartPoint& point) {
    if (!std::isfinite(charted.row.distance)) {
        if (point.required.remark.empty()) point.required.remark = charted.row.why_none;
        return;
    }
    point.width = charted.width;
    point.rows.push_back(charted.row);
    if (charted.row.solved()) point.hand_methods = charted.hand_methods;
}

// What cases that could not be read had to say stands before what the rows say.
void find_required(ChartPoint& point) {
    std::ranges::sort(point.rows, {}, &DistanceRow::distance);
    if (point.rows.empty()) return;
    const std::string unread = point.required.remark;
    point.required = required_distance(point.rows, point.width);
    if (!unread.empty()) point.required.remark = "a case can't be: " + unread + "; " + point.required.remark;
}

std::string number(double value) {
    return std::isfinite(value) ? fmt::format(",{:.6g}", value) : ",";
}

std::string labels_of(const Labels& labels, std::size_t left_out) {
    std::string text;
    for (std::size_t k = 0; k < labels.size(); ++k)
        if (k != left_out) text += csv_field(labels[k]) + ",";
    return text;
}

std::string charts_row(const StudyTable& table, const ChartPoint& point, std::size_t distance_axis) {
    const RequiredDistance& required = point.required;
    std::string row = labels_of(point.labels, distance_axis) + fmt::format("{:.6g}", point.width) +
                      number(required.distance.value_or(NAN)) + number(required.distance.value_or(NAN) / point.width) + "," +
                      csv_field(required.binding) + number(required.until.value_or(NAN)) + "," +
                      csv_field(required.until_binding) + "," + csv_field(required.remark);
    for (const std::string& method : table.hand_methods) {
        const auto found = point.hand_methods.find(method);
        row += number(found == point.hand_methods.end() ? NAN : found->second);
    }
    return row + "\n";
}

std::string maps_row(const ChartPoint& point, const DistanceRow& row, std::size_t distance_axis) {
    const auto least = row.least();
    const bool judged = row.solved() && least != row.left.end();
    return labels_of(point.labels, distance_axis) + fmt::format("{:.6g}", row.distance) + number(row.distance / point.width) +
           number(edge_utilisation(row)) + number(judged ? 1 - least->second : NAN) + "," +
           csv_field(judged ? least->first : "") + "," + csv_field(row.why_none) + "\n";
}

}  // namespace

std::vector<ChartPoint> chart_points(const StudyTable& table, std::size_t distance_axis) {
    std::vector<ChartPoint> points;
    std::map<Labels, std::size_t> places;
    for (const ChartedCase& charted : table.cases) {
        const Labels labels = without(charted.labels, {distance_axis});
        const auto [place, is_new] = places.emplace(labels, points.size());
        if (is_new) points.push_back({labels, charted.width, {}, {}, {}});
        add_case(charted, points[place->second]);
    }
    for (ChartPoint& point : points) find_required(point);
    return points;
}

std::vector<ChartGroup> grouped(const std::vector<ChartPoint>& points, const std::vector<std::size_t>& but) {
    std::vector<ChartGroup> groups;
    std::map<Labels, std::size_t> places;
    for (const ChartPoint& point : points) {
        const Labels labels = without(point.labels, but);
        const auto [place, is_new] = places.emplace(labels, groups.size());
        if (is_new) groups.push_back({labels, joined(labels), {}});
        groups[place->second].points.push_back(&point);
    }
    return groups;
}

std::string charts_csv(const StudyTable& table, const std::vector<ChartPoint>& points, std::size_t distance_axis) {
    std::string text = labels_of(table.axes, distance_axis) +
                       "belt_width_mm,required_mm,required_widths,binding,until_mm,until_binding,remark";
    for (const std::string& method : table.hand_methods) text += "," + csv_field(method + "_mm");
    text += "\n";
    for (const ChartPoint& point : points) text += charts_row(table, point, distance_axis);
    return text;
}

std::string maps_csv(const StudyTable& table, const std::vector<ChartPoint>& points, std::size_t distance_axis) {
    std::string text =
        labels_of(table.axes, distance_axis) + "distance_mm,distance_widths,edge_utilisation,utilisation,binding,reason\n";
    for (const ChartPoint& point : points)
        for (const DistanceRow& row : point.rows) text += maps_row(point, row, distance_axis);
    return text;
}

double edge_utilisation(const DistanceRow& row) {
    double most = NAN;
    for (const auto& [name, left] : row.left)
        if (row.solved() && name.starts_with(edge_criterion)) most = std::fmax(most, 1 - left);
    return most;
}

double label_number(const std::string& label) {
    std::istringstream stream(label);
    double number = NAN;
    return stream >> number ? number : NAN;
}

std::string label_unit(const std::string& label) {
    std::istringstream stream(label);
    double number = 0;
    std::string unit;
    if (stream >> number) std::getline(stream >> std::ws, unit);
    return unit;
}

}  // namespace swale
