#pragma once

#include "mesh/cubic_basis.h"

#include <vector>

namespace swale {

/// One quadrature point on a line with the basis there.
struct LinePoint {
    double position = 0;  ///< material coordinate [mm]
    double weight = 0;    ///< [mm]
    BasisValues basis;
};

/// Gauss points of every span of a basis; point k of span s is at [s * per_span + k].
struct LineRule {
    int per_span = 0;
    std::vector<LinePoint> points;
};

/// Gauss-Legendre rule with 1 to 8 points a span. Throws std::logic_error for other numbers.
LineRule gauss_rule(const CubicBasis& basis, int per_span);

}  // namespace swale
