#pragma once

#include "solver/transition/grid_solution.h"

namespace swale {

/// The belt of a shorter trough, its last bay repeated. `solution` outlives the start.
GridStart continued_start(const GridSolution& solution, double spacing);

/// Unstretched length per length in space of the longer belt: the bays added are as strained as the last of the shorter one.
double continued_scale(const TransitionCase& transition, const GridSolution& solution, int sets, int more_sets);

}  // namespace swale
