#pragma once

#include "io/case_table.h"
#include "materials/belt.h"
#include "solver/transition_case.h"

namespace swale {

/// Reads [limits]. A limit that is not given has the default of the belt's carcass with its source, or none.
Limits read_limits(CaseTable table, const Belt& belt);

/// A limit of lift-off is one of the centre roll: there must be one.
void check_lift_off(CaseTable limits, const TransitionLayout& layout);

}  // namespace swale
