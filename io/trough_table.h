#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"

namespace swale {

/// Reads the keys of [trough]. Roll lengths of three rolls default to the standard series by belt width, wing rolls to the
/// centre roll's, the others to common practice: gap 10 mm, end radius 5 mm, diameter 152.4 mm, spacing 1200 mm, sets "auto"
/// (held: 1).
Trough read_trough(CaseTable& table, double belt_width);

}  // namespace swale
