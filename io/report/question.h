#pragma once

#include "solver/transition_case.h"

#include <string>

namespace swale {

/// What the run was asked, in a sentence.
std::string question(const TransitionCase& transition);

}  // namespace swale
