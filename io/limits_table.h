#pragma once

#include "io/case_table.h"
#include "materials/belt.h"
#include "solver/transition_case.h"

namespace swale {

/// The limits of the belt's carcass, each with its source; of those that no source gives there are none.
Limits default_limits(const Belt& belt);

/// Reads a table of limits. One that is not given there is as `otherwise`.
Limits read_limits(CaseTable table, const Limits& otherwise);

/// A limit of lift-off is one of the centre roll: there must be one.
void check_lift_off(CaseTable limits, const TransitionLayout& layout);

}  // namespace swale
