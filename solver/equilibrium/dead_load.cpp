#include "solver/equilibrium/dead_load.h"

#include "mesh/quadrature.h"

namespace swale {

namespace {

// Integral of each basis function; a cubic is exact with two Gauss points a span.
Eigen::VectorXd control_lengths(const CubicBasis& basis) {
    Eigen::VectorXd lengths = Eigen::VectorXd::Zero(basis.size());
    for (const LinePoint& point : gauss_rule(basis, 2).points)
        for (int a = 0; a < 4; ++a) lengths[point.basis.first + a] += point.weight * point.basis.value[a];
    return lengths;
}

}  // namespace

Eigen::VectorXd control_areas(const Patch& patch) {
    const Eigen::VectorXd lengths = control_lengths(patch.along), widths = control_lengths(patch.across);
    Eigen::VectorXd areas(patch.points());
    for (int i = 0; i < lengths.size(); ++i)
        for (int j = 0; j < widths.size(); ++j) areas[patch.index(i, j)] = lengths[i] * widths[j];
    return areas;
}

DeadLoad area_load(const Patch& patch, const Eigen::Vector3d& per_area) {
    return DeadLoad(per_area * control_areas(patch).transpose());
}

}  // namespace swale
