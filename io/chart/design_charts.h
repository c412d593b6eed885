#pragma once

#include "io/chart/study_table.h"

#include <map>
#include <string>
#include <vector>

namespace swale {

/// Which axes of a study play which part; all others tell one chart from the next.
struct ChartAxes {
    std::size_t distance = 0;  ///< along which the required one is looked for
    std::size_t over = 0;      ///< to the right in a chart: the tension
    std::size_t lines = 0;     ///< one line each: the trough angle
    std::size_t lift = 0;      ///< upwards in a map
};

/// All cases that differ in distance alone, and what they require.
struct ChartPoint {
    std::vector<std::string> labels;  ///< as of any of its cases; that of the distance means nothing
    double width = 0;                 ///< of the belt [mm]
    std::vector<DistanceRow> rows;    ///< in order of distance
    RequiredDistance required;
    std::map<std::string, double> hand_methods;  ///< distance that each asks for [mm]; NaN: it gives none
};

/// In the order in which their first cases stand in the study.
std::vector<ChartPoint> chart_points(const StudyTable& table, std::size_t distance_axis);

/// Points put together by the labels of all axes but some, in the order of the points.
struct ChartGroup {
    std::vector<std::string> labels;  ///< one an axis; empty for what the points differ in
    std::string name;                 ///< those labels, "EP 800/4 6+3, 0.5 depths"
    std::vector<const ChartPoint*> points;
};
std::vector<ChartGroup> grouped(const std::vector<ChartPoint>& points, const std::vector<std::size_t>& but);

/// A row a point: labels, belt_width_mm, required_mm, required_widths, binding, until_mm, until_binding, remark, and of each
/// hand method the distance that it asks for, NAME_mm.
std::string charts_csv(const StudyTable& table, const std::vector<ChartPoint>& points, std::size_t distance_axis);

/// A row a case: labels, distance_mm, distance_widths, edge_utilisation, utilisation (the worst of what is judged; both with
/// the error on top, so that 1 is where the verdict turns), binding, reason.
std::string maps_csv(const StudyTable& table, const std::vector<ChartPoint>& points, std::size_t distance_axis);

/// The criterion that maps show; a point's rows name it with each of their states.
inline constexpr const char* edge_criterion = "edge tension / rated tension";

/// The share used of the worst edge among a row's states; NaN where it is not judged.
double edge_utilisation(const DistanceRow& row);

/// The number that a label begins with, "0.5 depths"; NaN without one.
double label_number(const std::string& label);
/// What follows it: "depths".
std::string label_unit(const std::string& label);

}  // namespace swale
