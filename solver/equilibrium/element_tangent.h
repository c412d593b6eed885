#pragma once

#include "mesh/patch.h"

#include <Eigen/Core>

#include <vector>

namespace swale {

/// Second derivative of a span's energy with respect to its 16 control points [N/mm]: row and column 3 a + i for component i
/// of point a. Only the lower triangle is meant.
using ElementTangent = Eigen::Matrix<double, 48, 48>;

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
