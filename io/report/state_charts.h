#pragma once

#include "io/picture/bar_chart.h"
#include "io/picture/field_map.h"
#include "io/picture/line_chart.h"
#include "io/picture/trough_shapes.h"
#include "io/run_record.h"

#include <array>
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

/// Longitudinal strain on the flattened belt.
FieldMap strain_map(const RunRecord& record, const StateResult& state);

/// Rolls of the sets as rectangles under the flat belt, a roll's diameter long: x and y from, x and y to [mm].
std::vector<std::array<double, 4>> rolls_below(const RunRecord& record, const StateResult& state);

/// What each method says the transition needs.
BarChart required_distances(const RunRecord& record);

}  // namespace swale
