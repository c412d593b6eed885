#pragma once

#include "solver/transition/belt_model.h"

namespace swale {

/// The model that a stored shape solves. Throws std::invalid_argument if the shape is none of a grid.
BeltModel restored_model(const TransitionCase& transition, int sets, const TensionState& state, const BeltShape& shape);

}  // namespace swale
