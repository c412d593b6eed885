#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"
#include "solver/transition_case.h"

#include <vector>

namespace swale {

/// Reads every [[tension]] of the file: names that differ, and either a total tension or, with a held trough, an elongation. A
/// state may have limits of its own; those that it leaves out are as `limits`. Where the case has a [load], a state bears it
/// unless `loaded` says no.
std::vector<TensionState> read_states(CaseTable& file, Support trough, const Limits& limits, bool has_load);

}  // namespace swale
