#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"

namespace swale {

/// Heights of pulley and stations above the line of the full sets; a pulley below it is a mistake in most conveyors, but not
/// here.
inline constexpr Allowed lift_range = {Kind::length, -1000, 2000};

/// Reads [pulley].
Pulley read_pulley(CaseTable table);

/// Reads the key `support` of a table; rolls if absent.
Support read_support(CaseTable& table);

}  // namespace swale
