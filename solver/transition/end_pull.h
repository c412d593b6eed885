#pragma once

#include "solver/equilibrium/dead_load.h"

#include <memory>

namespace swale {

/// The total tension of a belt [N] on the one displacement along x of its far end; half of it where half is modelled.
std::shared_ptr<const DeadLoad> end_pull(const Patch& patch, double total);

}  // namespace swale
