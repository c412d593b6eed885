#pragma once

#include "io/case_table.h"
#include "solver/transition_case.h"

namespace swale {

/// Reads [solve]; every key has a default.
SolveSettings read_settings(CaseTable table);

}  // namespace swale
