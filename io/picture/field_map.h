#pragma once

#include "io/picture/contour_lines.h"
#include "io/picture/line_chart.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// A place on the map that is marked and named.
struct MapPoint {
    std::string label;
    double x = 0, y = 0;
};

/// A field over the flattened belt.
struct FieldMap {
    std::string title;
    std::string field, unit;
    GridField values;
    ColourScale scale;
    std::vector<Upright> sets = {};                 ///< lines across
    std::vector<Upright> junctions = {};            ///< lines along, at y
    std::vector<std::array<double, 4>> rolls = {};  ///< outlines of the rolls below: x and y from, x and y to
    std::optional<MapPoint> peak = {};
    std::optional<Level> limit = {};  ///< contour of that value, heavier
    double width = 900;
};

ChartFrame frame_of(const FieldMap& map);

/// Bands of colour with their boundaries as contour lines and a scale beside them.
Drawing draw(const FieldMap& map);

}  // namespace swale
