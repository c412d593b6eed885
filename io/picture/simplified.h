#pragma once

#include <Eigen/Core>

#include <vector>

namespace swale {

/// A line without the points that lie within `off` of it upright, so that reading it at any x differs by no more than that (of
/// Douglas and Peucker's kind, Cartographica 10 (1973) 112, with the distance taken along y). x rises.
std::vector<Eigen::Vector2d> simplified(const std::vector<Eigen::Vector2d>& line, double off);

}  // namespace swale
