#pragma once

#include "io/chart/design_charts.h"

#include <string>

namespace swale {

/// Names of a study's axes by their parts in a chart.
struct AxisNames {
    std::string distance = "transition.distance";
    std::string over = {};   ///< empty: the tension, or the first axis that is left
    std::string lines = {};  ///< empty: the trough angle, or the next that is left
    std::string lift = {};   ///< empty: the pulley's lift, or no maps
};

/// The axes of those names. Throws BadQuantity for a name that is no axis of the study, or where there is none for a part.
ChartAxes chart_axes(const StudyTable& table, const AxisNames& names);

}  // namespace swale
