#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale::verification {

/// A fabric belt of 1200 mm at 25 N/mm on two 35 degree sets, 2400 mm from its pulley, on a coarse pair of grids: small enough
/// for a test. Chosen data, not those of a belt on the market.
TransitionCase fabric_transition();

/// Weight of the modelled belt, wrap included [N].
double weight_of(const TransitionCase& transition, const BeltShape& shape);

}  // namespace swale::verification
