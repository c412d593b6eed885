#pragma once

#include "io/case_table.h"
#include "materials/belt.h"
#include "mesh/transition_layout.h"

namespace swale {

/// Reads [pulley], [trough] and [transition], and checks that the belt fits what they describe.
TransitionLayout read_layout(CaseTable& file, const Belt& belt);

}  // namespace swale
