#pragma once

#include "solver/transition/grid_solution.h"
#include "solver/transition/shape_energy.h"
#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// A strip is slack: tension below zero somewhere outside the excluded zones. Such a belt may have several equilibria.
bool slack(const Readings& readings);

/// An equilibrium of the same state on the same grid with another shape.
struct OtherSolution {
    std::string start;  ///< what it was found from
    GridSolution solution;
    Readings readings;             ///< of its grid, without errors
    double energy_difference = 0;  ///< above the known one [N mm]
    Separation apart;              ///< from the known one
};

/// Solves the task from `starts` other starts in a fixed order, of which there are eight, in the full model nine, and gives
/// those equilibria that differ from `known` and from each other: by more than 0.5 mm somewhere, or by 1 % of the edge strain.
/// `known` is the converged solution of the same task.
std::vector<OtherSolution> other_equilibria(const GridTask& task, const GridSolution& known, int starts,
                                            const NewtonWatcher& watcher, NewtonTimes& times);

/// Makes the equilibrium of least energy the known one; the one that was known takes its place among the others, found "from
/// the usual start". Energies and distances are then those from the new one.
void put_lowest_first(const GridTask& task, GridSolution& known, std::vector<OtherSolution>& others);

/// As it is reported, with its lowest eigenvalues.
OtherEquilibrium reported(const TransitionCase& transition, const TensionState& state, const OtherSolution& other);

}  // namespace swale
