#pragma once

#include "solver/transition/belt_model.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// Force of one roll on the whole belt [N]; of a roll with a mirror image that on one side.
Eigen::Vector3d roll_force(const BeltContact& contact, bool half, const ControlPoints& points);

/// Force of every roll, held line and of the pulley on the whole belt, in their order along the belt. Rolls: the integrated
/// contact pressure. Held lines and the stuck pulley line: the reaction, to which the pulley's contact is added.
std::vector<SupportForce> support_forces(const TransitionCase& transition, const BeltModel& model, const ControlPoints& points);

/// Resultant along x of the whole belt at the far end [N]; with a given total it is that one.
double far_tension(const TensionState& state, const BeltModel& model, const ControlPoints& points);

/// Resultant along x at x = 0: what the far end pulls, less what the rolls and the pulley beyond x = 0 carry along x [N].
double pulley_tension(const BeltModel& model, const ControlPoints& points, double far);

/// What the trough behind the far end, or the plane there, does to the belt [N], whole belt. Held: the reaction is a support's.
Eigen::Vector3d far_end_force(const TensionState& state, const BeltModel& model, const ControlPoints& points);

}  // namespace swale
