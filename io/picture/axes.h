#pragma once

#include "io/picture/line_chart.h"
#include "io/picture/round_steps.h"

#include <string>

namespace swale {

inline constexpr double label_size = 13, small_size = 11.5;

struct AxisName {
    std::string label, unit;
};

/// Grid lines with their values, the x axis' name below, the y axis' name above its upper end, each with its unit.
void draw_axes(const ChartFrame& frame, const AxisName& x, const AxisName& y, Drawing& drawing);

}  // namespace swale
