#pragma once

#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// A sentence of caution and the first state that says it.
struct StateNote {
    std::string state, sentence;
};

/// What the states say of themselves; a sentence that several share is said once.
std::vector<StateNote> state_notes(const TransitionResult& result);

}  // namespace swale
