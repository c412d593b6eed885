#pragma once

#include <Eigen/Core>

#include <optional>

namespace swale {

/// Half a cell of a chain of equal, mirror-symmetric cells, seen from its end: stiffness [N/mm] when the other half does the
/// mirror image of it, and when it does the opposite.
struct HalfCell {
    Eigen::MatrixXd symmetric, antisymmetric;
    /// Takes what a joint does, in the coordinates of the cell on its left, to the mirrored coordinates of the cell on its
    /// right. Its own inverse.
    Eigen::MatrixXd turn;
};

/// Stiffness at the left end of a chain of 64 cells, in the coordinates of a cell that would stand on its left; the far end is
/// free, or held where it would give way. Empty if two cells with their outer ends held are not stable.
std::optional<Eigen::MatrixXd> endless_chain_stiffness(const HalfCell& half);

}  // namespace swale
