#pragma once

#include "io/case_table.h"
#include "materials/belt.h"
#include "mesh/transition_layout.h"

namespace swale {

/// A belt without a designation: its section as given outright in [belt.section], which must be positive definite. Underside
/// defaults to half the thickness.
Belt belt_of_section(CaseTable& table);

/// Notes a section outright without `foundation` although rolls carry the belt: there is no default, bottom covers differ too
/// much. Where all supports hold the section it may be left out.
void check_foundation(CaseTable belt, const TransitionLayout& layout);

}  // namespace swale
