#pragma once

#include <Eigen/Core>

namespace swale {

/// Half a cell of a chain of equal, mirror-symmetric cells, seen from its end: stiffness [N/mm] when the other half does the
/// mirror image of it, and when it does the opposite.
struct HalfCell {
    Eigen::MatrixXd symmetric, antisymmetric;
    /// Takes what a joint does, in the coordinates of the cell on its left, to the mirrored coordinates of the cell on its
    /// right. Its own inverse.
    Eigen::MatrixXd turn;
};

/// Stiffness at the left end of an endless chain, in the coordinates of a cell that would stand on its left. The far end is
/// free. By doubling: 2^12 cells, as many as matter for a chain whose disturbances fade or grow no faster than linearly.
Eigen::MatrixXd endless_chain_stiffness(const HalfCell& half);

}  // namespace swale
