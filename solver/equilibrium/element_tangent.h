#pragma once

#include "mesh/patch.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace swale {

/// Second derivative of a span's energy with respect to its 16 control points [N/mm]: the blocks xx, xy, xz, yy, yz, zz.
/// Entry (a, b) of block ij is d2E / d(point a, component i) d(point b, component j).
using ElementTangent = std::array<Eigen::Matrix<double, 16, 16>, 6>;

/// Component pair of each block.
inline constexpr std::array<std::array<int, 2>, 6> tangent_blocks{{{0, 0}, {0, 1}, {0, 2}, {1, 1}, {1, 2}, {2, 2}}};

/// Takes element tangents in; the system behind it adds them up.
class TangentSink {
  public:
    virtual ~TangentSink() = default;
    virtual void add(const SpanNodes& nodes, const ElementTangent& tangent) = 0;
    /// A coupling of any control points, row and column 3 k + i for component i of nodes[k], none named twice [N/mm]. Only the
    /// lower triangle is read. The band is as wide as `Term::coupled_points` asked for.
    virtual void add_block(const std::vector<int>& nodes, const Eigen::MatrixXd& tangent) = 0;
};

}  // namespace swale
