#pragma once

#include "solver/transition/grid_solution.h"
#include "solver/transition_case.h"

namespace swale {

/// How far the readings of a grid are from those of the grid below, as the values of readings. A field's is its largest
/// difference at the coarser grid's places around either peak, or that of the peaks: at one place alone, or between peaks in
/// different places, a difference may vanish by chance.
Readings grid_difference(const TransitionCase& transition, const GridSolution& fine, Readings of_fine,
                         const GridSolution& coarse, Readings of_coarse);

}  // namespace swale
