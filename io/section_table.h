#pragma once

#include "io/case_table.h"
#include "materials/belt.h"

namespace swale {

/// A belt without a designation: its section as given outright in [belt.section], which must be positive definite. Underside
/// defaults to half the thickness; the foundation to 2 N/mm^3, the middle of what bottom covers have (common practice: 1 to 5;
/// the edge strain hardly depends on it, pressures on rolls do).
Belt belt_of_section(CaseTable& table);

}  // namespace swale
