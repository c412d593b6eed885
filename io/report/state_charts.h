#pragma once

#include "io/picture/bar_chart.h"
#include "io/picture/line_chart.h"
#include "io/picture/trough_shapes.h"
#include "io/run_record.h"

#include <string>
#include <vector>

namespace swale {

/// A line chart of a state with its caption; `id` names it in files and in the page: "along", "tension-across".
struct StateChart {
    std::string id, caption;
    LineChart chart;
};

/// Strain along the belt with the hand methods' lines, tension and strain across at each section, pressure along the rolls. Of
/// a converged state.
std::vector<StateChart> state_charts(const RunRecord& record, const StateResult& state);

/// The belt's sections with the rolls under them.
std::vector<TroughShape> trough_shapes(const RunRecord& record, const StateResult& state);

/// What each method says the transition needs.
BarChart required_distances(const RunRecord& record);

}  // namespace swale
