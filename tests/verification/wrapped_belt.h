#pragma once

#include "mesh/graded_breaks.h"
#include "solver/contact/contact_energy.h"
#include "tests/verification/strip.h"

#include <memory>

/// A belt with bending stiffness under tension over a frictionless cylinder, wrap angle phi, far tension T [N/mm]. The
/// inextensible elastica on a rigid cylinder of radius R at the middle line: with cos alpha = 1 - D/(2 T R^2)
///   arc:    alpha < phi/2: contact over phi - 2 alpha, pressure p = (T - D/(2 R^2))/R on it and a line force
///           sqrt(T D - D^2/(4 R^2))/R at each lift-off;
///   line:   otherwise: curvature 2 sqrt(T/D) sin(phi/4) under a line force 2 T sin(phi/2).
/// Closed forms derived for this project; Singh, Journal of Elasticity (2022), and Grandgeorge, Sano and Reis (2022) treat the
/// same problem. Modelled is one half, 14 lengths sqrt(D/T) long.
namespace swale::verification {

struct Wrap {
    static constexpr double radius = 100, bending = 1e4, width = 5;
    static constexpr double unit_force = bending / (radius * radius);  // D/R^2, 1 N/mm
    static constexpr double stretch = 2e-5;                            // the closed form has none

    double angle, tension, foundation;  // [rad], [N/mm], [N/mm^3]

    double membrane() const { return tension / stretch; }
    /// Of the belt, sqrt(D/T), and of the belt on the foundation, (4 D/k)^(1/4).
    double layer() const;
    double foundation_layer() const;
    double alpha() const;
    double lift_off() const;  ///< from the middle of the arc; negative for a line
    double pressure() const { return (tension - unit_force / 2) / radius; }
    double line_force() const;
};

/// Foundation in units of D/l^4, l = sqrt(D/T).
Wrap wrap_on(double angle, double tension, double relative_foundation);

/// The belt's half from the middle of the wrap, where it touches the cylinder at z = 0.
struct WrappedBelt {
    Patch patch;
    ControlPoints points;
    std::shared_ptr<ContactEnergy> contact;
};

Patch patch_for(const Wrap& wrap, const FinePlace& fine);
WrappedBelt wrapped_belt(const Wrap& wrap, const Patch& patch);

/// What the pressure integrates to: with p uniform up to the lift-off s and a line force F there, the sum is p s + F and its
/// first moment p s^2/2 + F s, whatever width the foundation gives to the line force.
struct Bearing {
    double pressure, line_force, lift_off;
};
Bearing bearing_of(const WrappedBelt& belt);

}  // namespace swale::verification
