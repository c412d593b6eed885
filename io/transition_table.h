#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"

namespace swale {

/// Reads [transition] into a layout that has its pulley and trough: the distance and the intermediate sets in order. Sets must
/// stand clear of each other, of the pulley and of the first full set.
void read_transition(CaseTable& table, TransitionLayout& layout);

}  // namespace swale
