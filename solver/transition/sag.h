#pragma once

#include "solver/transition_case.h"

namespace swale {

/// A state whose longest free span sags by more than this share of it is beyond what conveyors are run at (1 to 3 % between
/// idlers, common practice, no source).
inline constexpr double slack_sag = 0.05;

/// Sag of the belt, with its bulk where the state is loaded, over the longest free span (pulley, stations, full sets), w l / (8
/// T) of a shallow parabola; 0 if the state gives no total tension.
double sag_over_span(const TransitionCase& transition, const TensionState& state);

/// By how much that parabola is longer than its span, 8/3 sag^2 / l [mm].
double hanging_length(const TransitionCase& transition, const TensionState& state);

}  // namespace swale
