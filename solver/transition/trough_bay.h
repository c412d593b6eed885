#pragma once

#include "mesh/patch.h"
#include "solver/equilibrium/system.h"
#include "solver/newton/newton.h"
#include "solver/transition/belt_bulk.h"
#include "solver/transition/belt_supports.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <map>
#include <optional>
#include <string>

namespace swale {

/// Half a bay of the trough far from the transition, from a full set (material x = 0) to mid-span; the belt is symmetric about
/// both planes. What every bay of an endless trough repeats.
struct TroughBay {
    TensionState state;
    Patch patch;       ///< over the unstretched belt
    double scale = 1;  ///< unstretched length per length in space
    int gauss_points = 3;
    ControlPoints points;
    ControlPoints gradient;  ///< of the energy without the pull: at the last two rows what the next bay must bear [N]
    NewtonOutcome outcome;
    std::optional<BulkLoad> bulk = {};
};

/// The knots of the last half bay of a belt's patch, as in space, from the last set to mid-span.
Patch half_bay_of(const TransitionLayout& layout, const Patch& patch_in_space, int sets);

/// Solved under the state's total tension; its unstretched length such that the end is at mid-span,
/// from `scale` on.
TroughBay solve_trough_bay(const TransitionCase& transition, const TensionState& state, const Patch& half_bay, double scale,
                           int gauss_points, NewtonTimes& times);

/// The same state from the bay of other knots.
TroughBay solve_trough_bay(const TransitionCase& transition, const Patch& half_bay, const TroughBay& known, NewtonTimes& times);

/// Another case's or state's bay of the same unstretched length on the same knots: what a small change of either does to it,
/// without the jumps of a search for the length.
TroughBay same_bay(const TransitionCase& transition, const TensionState& state, const TroughBay& known, NewtonTimes& times);

/// Resultants of the rolls of a set in every bay of the endless trough, by the roll's name in its set [N].
std::map<std::string, double> running_roll_forces(const TransitionCase& transition, const TroughBay& bay);

/// Roll forces, bending at the junction and line force on the wing roll in every bay of the endless trough.
RunningTrough running_trough(const TransitionCase& transition, const TroughBay& bay);

/// The half bay with its end at mid-span left free, for its stiffness there.
System free_bay(const TransitionCase& transition, const TroughBay& bay, SetPlane plane, Parity parity);

}  // namespace swale
