#pragma once

#include "solver/transition/grid_solution.h"

namespace swale {

/// The ruled surface between pulley and trough, drawn by a held far end's elongation: where a solution without a neighbour
/// starts from. On the patch of the belt, unstretched by `task.scale`.
GridStart ruled_start(const GridTask& task);

/// Solves a grid without a neighbour. First on every other knot, at a tenth of the cost, and from there on the grid itself;
/// if that fails or the belt is slack, from the ruled surface at once; if that fails too, down from higher tensions, at which
/// the belt is taut. The record counts the iterations of all attempts.
GridSolution solve_cold(const GridTask& task, const NewtonWatcher& watcher, NewtonTimes& times);

}  // namespace swale
