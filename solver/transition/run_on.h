#pragma once

#include "solver/equilibrium/system.h"

#include <optional>

namespace swale {

/// A belt that runs on to a turning pulley and sticks there, once the motion is steady.
///
/// In steady motion a particle is at r(X + V t, Y): its velocity V r,X is the pulley's, the same for the whole width, from the
/// line on where it begins to stick. So r,X = (stretch, 0, 0) along that line, with one unknown stretch, while the section
/// itself, r(0, Y), lies as the belt arrives; its mean place is the pulley's top. These conditions are not those of a minimum:
/// what holds the section is friction, and its work is not of a potential. With the section held where it is the belt is a
/// symmetric problem, so Newton's method for the section goes round that one. The line is taken at X = 0, though in space it
/// is there only up to the section's warp.

/// Control values (x, y) of the section on the pulley.
Eigen::Matrix2Xd section_on_pulley(const Patch& patch, const ControlPoints& points);

/// Largest difference of r,X along the pulley's line from that of one stretch and no sideways slope [-].
double run_on_departure(const Patch& patch, const ControlPoints& points);

/// A Newton step of the section, and of the belt with it, from an equilibrium with the section held: `system` leaves it free
/// in its plane. Absent where that equilibrium is not stable.
std::optional<ControlPoints> run_on_step(const System& system, const ControlPoints& points);

}  // namespace swale
