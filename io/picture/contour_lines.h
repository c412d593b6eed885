#pragma once

#include "io/picture/grid_field.h"

#include <vector>

namespace swale {

/// The lines on which the field has that value, each as long as it goes.
std::vector<std::vector<Eigen::Vector2d>> contour_lines(const GridField& field, double value);

}  // namespace swale
