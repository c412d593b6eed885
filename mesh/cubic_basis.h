#pragma once

#include <Eigen/Core>

#include <array>
#include <vector>

namespace swale {

/// The four cubic B-splines that live on one span, with derivatives with respect to the material coordinate.
struct BasisValues {
    int first = 0;  ///< index of the first of the four
    std::array<double, 4> value{};
    std::array<double, 4> slope{};      ///< [1/mm]
    std::array<double, 4> curvature{};  ///< [1/mm^2]
};

/// Cubic C2 B-splines on an open knot vector with simple, freely graded inner knots (Piegl and Tiller, The NURBS Book, ch. 2).
class CubicBasis {
  public:
    /// `breaks` are the span ends in mm, strictly increasing, at least two. Throws std::logic_error otherwise.
    explicit CubicBasis(std::vector<double> breaks);

    int size() const { return spans() + 3; }
    int spans() const { return static_cast<int>(breaks_.size()) - 1; }
    double begin() const { return breaks_.front(); }
    double end() const { return breaks_.back(); }
    const std::vector<double>& breaks() const { return breaks_; }
    /// With the ends fourfold [mm].
    std::vector<double> knots() const;

    /// Span that holds x; a break belongs to the span on its right, the end to the last span.
    int span_of(double x) const;
    BasisValues at(double x) const { return at(x, span_of(x)); }
    BasisValues at(double x, int span) const;

    /// Averages of three neighbouring knots: a control point placed there by a linear function reproduces it.
    std::vector<double> greville() const;
    /// Entry (i, j): basis function j at Greville abscissa i.
    Eigen::MatrixXd collocation() const;

    /// The same basis with every break moved by the factor.
    CubicBasis scaled(double factor) const;
    /// Every span cut in halves.
    CubicBasis halved() const;

    /// Matrix R (fine.size() x size()) with fine control points = R * control points for the same curve. Every break of this
    /// basis must be one of `fine`; Boehm, Inserting new knots into B-spline curves, CAD 12 (1980).
    Eigen::MatrixXd refinement(const CubicBasis& fine) const;

  private:
    double knot(int i) const;  // i from 0 to spans() + 6
    std::vector<double> breaks_;
};

}  // namespace swale
