#pragma once

#include "mesh/roll.h"

#include <Eigen/Core>

#include <vector>

namespace swale {

/// A roll's surface for pictures: quadrilaterals round it and one polygon as the flat of either end.
struct RollMesh {
    std::vector<Eigen::Vector3d> points;  ///< [mm]
    std::vector<std::vector<int>> cells;  ///< corners as indices into `points`, anticlockwise seen from outside
};

/// `segments` round the axis; the rounding of an end is `end_segments` long.
RollMesh roll_mesh(const Roll& roll, int segments = 72, int end_segments = 4);

}  // namespace swale
