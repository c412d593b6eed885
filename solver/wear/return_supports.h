#pragma once

#include "mesh/patch.h"
#include "solver/equilibrium/supports.h"

namespace swale {

/// Supports of a belt on a return roll, x across and y along the run: planes of symmetry at the roll, y = 0, and at mid-span,
/// which lies at `mid_span`; a half model has one at x = 0 too, a whole one is held sideways at one point.
Supports return_supports(const Patch& patch, double mid_span);

}  // namespace swale
