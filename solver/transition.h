#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <functional>

namespace swale {

using ProgressListener = std::function<void(const ProgressEvent&)>;

/// Solves every tension state of a case and judges it. States that do not converge are named with their reason, the others
/// are delivered. Warm start from one state to the next in the order of the case.
TransitionResult solve_transition(const TransitionCase& transition, const ProgressListener& listener = {});

/// Solves every state of a case as if it were the only one: a result each, in their order. Each starts from the one before, on
/// all grids, so that neighbours in tension should follow each other, the highest first. On the caller's thread; `cost` is a
/// share of the whole.
std::vector<TransitionResult> solve_tensions(const TransitionCase& transition);

/// Everything of one state that follows from its shape, without solving: readings, surface, forces. For stored results.
/// `reason` of the result carries the relative residual of the shape.
StateResult restore_state(const TransitionCase& transition, int sets, const TensionState& state, const BeltShape& shape);

}  // namespace swale
