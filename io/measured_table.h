#pragma once

#include "io/case_table.h"
#include "materials/belt.h"

namespace swale {

/// Reads what a certificate gives of a belt by designation (modulus, elongation_at_reference, rated_tension, thickness, mass,
/// troughability) and puts it in the place of what the catalogue assumes; what contradicts itself becomes a warning of the
/// belt. Only the rated tension goes with a section outright. `belt.width` must be set.
void read_measured(CaseTable& table, Belt& belt);

}  // namespace swale
