#pragma once

#include "io/case_table.h"
#include "materials/belt.h"

namespace swale {

/// Reads [belt] with either a designation or [belt.section]. What was measured overrides what the catalogue assumes.
Belt read_belt(CaseTable table);

}  // namespace swale
