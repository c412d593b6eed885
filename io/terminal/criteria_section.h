#pragma once

#include "solver/transition_result.h"

#include <string>

namespace swale {

/// Tension, mean strain and every criterion by states against its limit, with the share of the limit used.
std::string criteria_section(const TransitionResult& result);

/// Criteria without a value, without a limit or with one that only advises, each with the reason. Empty if all were judged.
std::string not_judged_section(const TransitionResult& result);

}  // namespace swale
