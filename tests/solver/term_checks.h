#pragma once

#include "solver/equilibrium/term.h"

#include <Eigen/Geometry>

/// Checks that every term of the potential energy passes. Differences are central ones, extrapolated (Richardson) to the
/// sixth order, so that neither the step nor rounding limits them at 1e-9.
namespace swale::term_checks {

/// Numbers between -1 and 1 that look random and are the same on every machine.
ControlPoints scatter(const Patch& patch, unsigned seed);

/// The flat patch bent into a trough, turned, and disturbed by `amplitude` [mm] at each control point.
ControlPoints crumpled(const Patch& patch, double amplitude, unsigned seed);

/// Largest difference of the gradient from the derivative of the energy along a few directions, relative to the derivative.
double gradient_error(const Term& term, const ControlPoints& points, double step);

/// Largest difference of the tangent times a direction from the derivative of the gradient, relative to the derivative.
double tangent_error(const Term& term, const ControlPoints& points, double step);

/// Tangent on all control points, row and column 3 p + i for component i of point p [N/mm].
Eigen::MatrixXd dense_tangent(const Term& term, const ControlPoints& points);

/// Gradient on all control points [N].
ControlPoints gradient_of(const Term& term, const ControlPoints& points);

/// A large rotation and a shift.
Eigen::Isometry3d large_motion();
ControlPoints moved(const Eigen::Isometry3d& motion, const ControlPoints& points);

}  // namespace swale::term_checks
