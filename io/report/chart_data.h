#pragma once

#include "io/picture/line_chart.h"

#include <nlohmann/json.hpp>

namespace swale {

/// What the page's script needs of a chart to tell its values under the pointer: frame, units, lines.
nlohmann::ordered_json chart_data(const LineChart& chart);

}  // namespace swale
