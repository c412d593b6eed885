#pragma once

#include "solver/transition/carried_correction.h"

#include <functional>
#include <string>
#include <vector>

namespace swale {

/// A state solved on a grid and again with every span halved, until the judged readings are as accurate as wanted; where the
/// edge's peak beside the pulley is not, first on a grid that is finer in that corner alone.
struct GridLadder {
    GridSolution finest;
    Readings readings;                  ///< of the finest with their estimated errors
    std::optional<GridSolution> below;  ///< the grid whose spans are twice as long; absent if `finest` is the coarse one
    Readings of_below;
    int halvings = 0;                   ///< of the coarse grid that led to the finest
    std::vector<NewtonRecord> records;  ///< of all grids that were tried, coarsest first
    std::string why_stopped = {};       ///< why the wanted accuracy was not reached; empty if it was
};

/// Gives the watcher of a phase.
using ProgressWatch = std::function<NewtonWatcher(const std::string& phase)>;

/// The usual grid of a case, in space, on which a ladder stands. Throws std::invalid_argument if half a belt is to tell the
/// whole on wings of unequal length.
Patch coarse_grid(const TransitionCase& transition, int sets);

/// Every span halved.
Patch halved(const Patch& patch);

/// Solves a task whose patch is that of `known` halved, from its refined spline, with what is carried along on top. If that
/// does not converge, from the spline alone.
GridSolution solve_finer(const GridTask& task, const GridSolution& known, const NewtonWatcher& watcher, NewtonTimes& times,
                         CarriedCorrection* carried = nullptr);

Readings readings_of(const TransitionCase& transition, const GridSolution& solution);

/// The coarse grid alone; without a grid below, its readings' errors are what the values' shares allow for.
GridLadder lowest_rung(const TransitionCase& transition, const GridSolution& coarse);

/// Climbs from a converged coarse solution; at least one halving. If that one does not converge, `finest` is the failed one.
/// `coarse_task` is the task that led to it; the finer ones keep its scale. `carried`: from fine grid to fine grid of several
/// states of one transition.
GridLadder climb(const GridTask& coarse_task, const GridSolution& coarse, const ProgressWatch& watch, NewtonTimes& times,
                 CarriedCorrection* carried = nullptr);

}  // namespace swale
