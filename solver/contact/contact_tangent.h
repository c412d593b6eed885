#pragma once

#include "mesh/cubic_basis.h"
#include "solver/equilibrium/element_tangent.h"

namespace swale {

/// Tangent of a span from stiffnesses C at points (k, l), line by line along the belt:
///
///   K[a b i, a' b' j] = sum over k of  X_a X_a'(k)  sum over l of  Y_b Y_b'(l) C_ij(k, l)
///
/// It is symmetric in a a', in b b' and in i j on their own: of 48 x 48 numbers only 10 x 10 x 6 are different.
class ContactTangent {
  public:
    /// A point of the line at hand; `stiffness` holds its area [N/mm].
    void add(const BasisValues& across, const Eigen::Matrix3d& stiffness);
    /// Ends a line k; one without points costs nothing.
    void close_line(const BasisValues& along);

    bool empty() const { return empty_; }
    /// Lower triangle of the tangent.
    ElementTangent result() const;

  private:
    Eigen::Matrix<double, 6, 10> line_;  // i j, b b'
    Eigen::Matrix<double, 60, 10> sum_;  // the entries of a line, a a'
    bool line_empty_ = true, empty_ = true;
};

}  // namespace swale
