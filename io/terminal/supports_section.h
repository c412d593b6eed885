#pragma once

#include "solver/transition_result.h"

#include <string>

namespace swale {

/// Resultant force of pulley, intermediate sets and first full set on the belt by states. Empty without a solution.
std::string supports_section(const TransitionResult& result);

}  // namespace swale
