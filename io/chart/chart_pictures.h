#pragma once

#include "io/chart/design_charts.h"
#include "io/picture/line_chart.h"

#include <optional>

namespace swale {

/// What an axis of a study is called in print: "pulley.lift" is "pulley lift", of labels like "0.5 depths" in "trough depths".
struct AxisWords {
    std::string name, unit;
};
AxisWords axis_words(const std::string& axis, const std::string& label);

/// A label as print has it: "0.5 trough depths" for "0.5 depths".
std::string label_words(const std::string& axis, const std::string& label);

/// What the group's points have in common, "EP 800/4 6+3, pulley lift 0.5 depths"; of a study without further axes its title.
std::string chart_heading(const StudyTable& table, const ChartGroup& group);

/// A page of the handbook: required distance in belt widths over the tension, one line for each label of the axis `lines`.
/// Absent if no line has two points.
std::optional<LineChart> required_distance_chart(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group);
/// The same as a picture with its heading in it.
std::optional<Drawing> design_chart(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group);

/// Edge utilisation over distance and lift with the distance from which on all limits hold. Absent if the lifts are not two
/// numbers or more, or some of its cases have no solution.
std::optional<Drawing> utilisation_map(const StudyTable& table, const ChartAxes& axes, const ChartGroup& group);

}  // namespace swale
