#pragma once

#include "solver/transition_result.h"

#include <string>

namespace swale {

/// Text of along.csv: header, then the rows of every converged state in order. Comma, point, one header line, LF. A number
/// reads back to the same bits; a field is empty where the number is not defined. Names are quoted where they need it.
std::string along_csv(const TransitionResult& result);

/// Text of across.csv: the sections of every converged state.
std::string across_csv(const TransitionResult& result);

}  // namespace swale
