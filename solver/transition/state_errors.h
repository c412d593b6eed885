#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// Adds to a state's errors of what is no reading - strain at the far end, forces and lift-offs of supports, values of criteria
/// - the whole difference of two solutions that differ in their grid or in their far end.
void add_differences(const TransitionCase& transition, const TensionState& state, const StateResult& one,
                     const StateResult& other, StateResult& result);

}  // namespace swale
