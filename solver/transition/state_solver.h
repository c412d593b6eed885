#pragma once

#include "solver/transition.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/stability_of_belt.h"

#include <memory>
#include <mutex>

namespace swale {

/// Wall time of the parts, summed over threads [s].
struct SolverTimes {
    NewtonTimes newton;
    double stability = 0, recovery = 0;
    SolverTimes& operator+=(const SolverTimes& other);
};

/// Solves the operating states: the coarse grids one after the other, each from the one before; beside that chain the fine grid
/// of each state, the coarse grid on a longer trough, and what follows from them. The differences of the grids are the error
/// estimates. A state's result depends on the coarse chain alone, not on the order in which threads finish.
class StateSolver {
  public:
    StateSolver(const TransitionCase& transition, int sets, ProgressListener listener);

    /// Never throws for lack of convergence: status and reason of each state tell. In the order given.
    std::vector<StateResult> solve(const std::vector<TensionState>& states);

    const SolverTimes& times() const { return times_; }

  private:
    GridSolution solve_coarse(const TensionState& state, NewtonTimes& times) const;
    GridSolution solve_finer(const TensionState& state, const GridSolution& coarse, NewtonTimes& times) const;
    std::optional<GridSolution> solve_longer(const TensionState& state, const GridSolution& coarse, NewtonTimes& times) const;
    StateResult finish(const TensionState& state, const GridSolution& coarse);
    StateResult not_converged(const TensionState& state, const std::vector<NewtonRecord>& before,
                              const GridSolution& solution) const;
    NewtonWatcher watcher(const TensionState& state, const std::string& phase) const;
    void tell(const ProgressEvent& event) const;
    void account(const SolverTimes& times);

    const TransitionCase& transition_;
    int sets_;
    ProgressListener listener_;
    Patch coarse_patch_;                             // in space
    std::shared_ptr<const GridSolution> neighbour_;  // coarse solution of the last state that converged
    TensionState neighbour_state_;
    mutable std::mutex telling_;  // states are finished side by side
    SolverTimes times_;
};

/// Everything that follows from a solved grid, still without error estimates and eigenvalues.
StateResult recover_state(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                          const ControlPoints& points);

}  // namespace swale
