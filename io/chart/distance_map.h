#pragma once

#include "io/picture/contour_lines.h"
#include "io/picture/drawing.h"

#include <string>
#include <vector>

namespace swale {

/// Edge utilisation over distance (in belt widths) and another quantity.
struct DistanceMap {
    std::string title, y_label, y_unit;
    GridField utilisation;
    std::vector<Eigen::Vector2d> required;  ///< distance and the other, from where on all limits hold
};

/// Bands of colour whose boundaries are lines with their value, a heavier one at 1, and the required distance as a broken line.
Drawing draw(const DistanceMap& map);

}  // namespace swale
