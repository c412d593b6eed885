#pragma once

#include "materials/section.h"
#include "solver/equilibrium/system.h"

#include <optional>

namespace swale {

/// A belt that runs on to a turning pulley and sticks there, once the motion is steady.
///
/// In steady motion a particle is at r(X + V t, Y): its velocity V r,X is the pulley's, the same for the whole width, from the
/// line on where it begins to stick. So r,X = (stretch, 0, 0) along that line, with one unknown stretch, while the section
/// itself, r(0, Y), lies as the belt arrives; its mean place is the pulley's top. What pulls at the section is then known from
/// its own shape: N = A e with e = (1/2 (stretch^2 - 1), 1/2 (|r,Y|^2 - 1), stretch x,Y), so that N11 hangs on y,Y by A12 and
/// N12 on x,Y by A66: an unsymmetric law, not the derivative of an energy. With the section held where it is the belt is a
/// symmetric problem, so Newton's method for the section goes round that one. The condition is put on the section's forces
/// and not on r,X there, which on spans of a belt that bends away from the pulley swings about its mean. The line is taken at
/// X = 0, though in space it is there only up to the section's warp.

/// Control values (x, y) of the section on the pulley.
Eigen::Matrix2Xd section_on_pulley(const Patch& patch, const ControlPoints& points);

/// The one stretch with which the section carries the belt's whole pull.
double run_on_stretch(const System& system, const Section& section, const ControlPoints& points);

/// Largest difference of what the section carries from what it should with that stretch, as a stretch or a sideways slope [-].
/// `system` leaves the section free in its plane.
double run_on_departure(const System& system, const Section& section, const ControlPoints& points);

/// A Newton step of the section, and of the belt with it, from an equilibrium with the section held: `system` leaves it free
/// in its plane. Absent where that equilibrium is not stable.
std::optional<ControlPoints> run_on_step(const System& system, const Section& section, const ControlPoints& points);

}  // namespace swale
