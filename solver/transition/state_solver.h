#pragma once

#include "solver/transition.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/stability_of_belt.h"

#include <memory>
#include <mutex>

namespace swale {

/// Solves one operating state after the other: coarse grid, fine grid, the coarse grid again on a longer trough; the
/// differences are the error estimates. The coarse solution of one state starts the next.
class StateSolver {
  public:
    StateSolver(const TransitionCase& transition, int sets, ProgressListener listener);

    /// Never throws for lack of convergence: the status and the reason tell.
    StateResult solve(const TensionState& state);

    const NewtonTimes& times() const { return times_; }
    double stability_seconds() const { return stability_seconds_; }
    double recovery_seconds() const { return recovery_seconds_; }

  private:
    GridSolution solve_coarse(const TensionState& state);
    GridSolution solve_finer(const TensionState& state, const GridSolution& coarse);
    std::optional<GridSolution> solve_longer(const TensionState& state, const GridSolution& coarse, NewtonTimes& times) const;
    BeltStability judge_stability(const TensionState& state, const GridSolution& grid);
    void tell(const ProgressEvent& event) const;
    NewtonWatcher watcher(const TensionState& state, const std::string& phase) const;

    const TransitionCase& transition_;
    int sets_;
    ProgressListener listener_;
    Patch coarse_patch_;                       // in space
    std::unique_ptr<GridSolution> neighbour_;  // coarse solution of the state before
    TensionState neighbour_state_;
    mutable std::mutex telling_;  // two grids run side by side
    NewtonTimes times_;
    double stability_seconds_ = 0, recovery_seconds_ = 0;
};

/// Everything that follows from a solved grid, still without error estimates and eigenvalues.
StateResult recover_state(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                          const ControlPoints& points);

}  // namespace swale
