#pragma once

#include "io/picture/drawing.h"

#include <string>
#include <vector>

namespace swale {

/// The belt's section at one place with the outlines of the rolls under it: y to the left in space is drawn to the right. mm.
struct TroughShape {
    std::string name;
    std::vector<Eigen::Vector2d> belt;                ///< (y, z)
    std::vector<std::vector<Eigen::Vector2d>> rolls;  ///< outlines seen along the belt
};

/// One under the other to one scale, height as wide as width.
Drawing draw(const std::vector<TroughShape>& shapes, const std::string& title);

}  // namespace swale
