#pragma once

#include "io/case_table.h"
#include "solver/transition_case.h"

namespace swale {

/// Reads [solve]; every key has a default. Wing rolls that differ from left to right ask for the whole belt.
SolveSettings read_settings(CaseTable table, const TransitionLayout& layout);

}  // namespace swale
