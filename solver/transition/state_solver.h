#pragma once

#include "solver/transition.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/other_equilibria.h"
#include "solver/transition/stability_of_belt.h"
#include "solver/transition/workers.h"

#include <atomic>
#include <memory>
#include <mutex>

namespace swale {

/// Wall time of the parts, summed over threads [s].
struct SolverTimes {
    NewtonTimes newton;
    double stability = 0, recovery = 0;
    SolverTimes& operator+=(const SolverTimes& other);
};

/// Solves the operating states on two cores: the coarse grids one after the other, each from the one before; beside them, of
/// each that is known, other equilibria, of which that of least energy becomes the state's, and the same with another far end,
/// then finer grids and eigenvalues. The differences are the error estimates. If a far end turns out to be too near, finer
/// grids that were begun are given up. A state's result depends on the coarse chain alone, not on the order in which threads
/// finish.
class StateSolver {
  public:
    StateSolver(const TransitionCase& transition, ProgressListener listener);

    /// Never throws for lack of convergence: status and reason of each state tell. In the order given.
    std::vector<StateResult> solve(const std::vector<TensionState>& states);

    /// The same on the caller's thread alone, the finer grids and the longer troughs too each from the state before. Absent is
    /// a state that wants more sets.
    std::vector<std::optional<StateResult>> solve_in_turn(const std::vector<TensionState>& states);

    /// The path from the highest to the lowest tension, if the case asks for it; after `solve`.
    TensionPath path();

    /// Full sets in the model.
    int sets() const { return sets_; }
    const SolverTimes& times() const { return times_; }

  private:
    /// A state on the coarse grid, with the far end as it is reported and with one that is nearer to the endless trough; and
    /// what follows from it.
    struct CoarseState {
        TensionState state;
        GridSolution solution;
        Readings readings = {};  // if it converged
        std::vector<OtherSolution> others = {};
        std::optional<GridSolution> nearer = {};
        Readings nearer_readings = {};                // if there is one
        StateResult judged = {}, nearer_judged = {};  // if there is one
        std::optional<GridLadder> ladder = {};
        StateResult result = {};  // if the ladder's finest grid converged
        BeltStability lowest = {};
        std::vector<OtherEquilibrium> reported_others = {};
    };

    void solve_coarse_chain(const std::vector<TensionState>& states);
    void solve_coarse_in_turn(const std::vector<TensionState>& states);
    CoarseState& add_coarse(const TensionState& state);
    GridSolution solve_coarse(const TensionState& state);
    void solve_coarse_anew(CoarseState& coarse);
    static bool slack(const CoarseState& coarse);
    void look_for_others(CoarseState& coarse);
    void solve_nearer_end(CoarseState& coarse, CarriedCorrection* carried = nullptr);
    void follow_lowest(CoarseState& coarse);
    void follow(CoarseState& coarse);
    bool wants_more_sets(const CoarseState& coarse) const;
    void lengthen();

    void climb_from(CoarseState& coarse, CarriedCorrection* carried = nullptr);
    void find_lowest(CoarseState& coarse);
    BeltStability stability_of(const TensionState& state, const GridSolution& solution);
    std::vector<OtherEquilibrium> report_others(const CoarseState& coarse);
    StateResult recover(const CoarseState& coarse, const GridLadder& ladder);
    StateResult judged_of(const TensionState& state, const GridSolution& solution, const Readings& readings) const;
    void add_far_end(const CoarseState& coarse, StateResult& result) const;
    void add_stability(const CoarseState& coarse, const GridSolution& finest, BeltStability lowest, StateResult& result);
    StateResult finish(CoarseState& coarse);
    StateResult not_converged(const CoarseState& coarse, const GridLadder& ladder) const;

    GridTask coarse_task(const TensionState& state, double scale) const;
    NewtonWatcher watcher(const TensionState& state, const std::string& phase);
    void tell(const ProgressEvent& event);
    void account(const SolverTimes& times);

    const TransitionCase& transition_;
    int sets_;
    bool endless_;  // the trough goes on behind the last set
    ProgressListener listener_;
    Patch coarse_patch_;  // in space
    std::vector<CoarseState> coarse_;
    std::atomic<bool> too_near_ = false;  // the far end, in some state
    std::mutex telling_;                  // states are finished side by side
    SolverTimes times_;
    Workers workers_;  // the first to go: they use all above
};

/// What the criteria look at, of a solved grid: its readings, forces, the running trough.
StateResult recover_judged(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                           const ControlPoints& points, const Readings& readings);

/// Everything that follows from a solved grid, but its eigenvalues.
StateResult recover_state(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                          const ControlPoints& points, const Readings& readings);

}  // namespace swale
