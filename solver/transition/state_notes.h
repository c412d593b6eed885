#pragma once

#include "solver/transition/error_estimate.h"
#include "solver/transition/stability_of_belt.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// Cautions about a state in sentences, each added only where it applies.

/// The wanted accuracy was not reached; `why` says what stopped the refinement.
void note_accuracy(const TransitionCase& transition, const TensionState& state, const std::string& why, StateResult& result);

/// The trough is long enough only if the belt lies in its last set.
void note_floating_end(const TransitionLayout& layout, int sets, StateResult& result);

/// A negative eigenvalue is a warning; `model` is what the state was solved with.
void note_instability(const BeltStability& lowest, Symmetry model, StateResult& result);

/// A belt that hangs through more than conveyors are run with; also of a state that did not converge.
void note_sag(const TransitionCase& transition, const TensionState& state, StateResult& result);

/// What is uncommon about the idler sets, and what follows from it for the model; `endless`: the trough goes on behind it.
void note_sets(const TransitionLayout& layout, bool endless, StateResult& result);

/// An endless trough that is missing, since it is not stable, or in whose bays the belt is off the centre roll.
void note_running_trough(const BeltModel& model, StateResult& result);

/// What a steady run-on means and what friction it takes for granted.
void note_run_on(StateResult& result);

/// The bulk is loaded on a tail end's transition, overfills the belt, or must stand steeper than it does to stay on it; of a
/// state that did not converge the first two.
void note_bulk(const TransitionCase& transition, const TensionState& state, StateResult& result);

/// More than one equilibrium was found.
void note_others(StateResult& result);

}  // namespace swale
