#include "solver/equilibrium/stopwatch.h"
#include "solver/strain/mode_sample.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/state_errors.h"
#include "solver/transition/state_notes.h"
#include "solver/transition/state_solver.h"

#include <fmt/core.h>

#include <utility>

// What is reported of a state, once its grids are solved.

namespace swale {

namespace {

void store_stability(const BeltStability& lowest, const Patch& patch, StateResult& result) {
    result.eigenvalue_symmetric = lowest.symmetric;
    result.eigenvalue_antisymmetric = lowest.antisymmetric;
    if (lowest.symmetric)
        result.mode_symmetric = sample_mode(patch, lowest.symmetric_motion, Parity::symmetric, result.surface);
    if (lowest.antisymmetric)
        result.mode_antisymmetric = sample_mode(patch, lowest.antisymmetric_motion, Parity::antisymmetric, result.surface);
}

// Solved again on a finer grid a belt takes two to five steps; many more mean that it went on to another shape.
bool moved_on(const GridSolution& finest) {
    constexpr int usual_iterations = 10;
    return finest.record.iterations > usual_iterations;
}

}  // namespace

StateResult StateSolver::not_converged(const CoarseState& coarse, const GridLadder& ladder) const {
    const TensionState& state = coarse.state;
    StateResult failed;
    failed.name = state.name;
    failed.newton = ladder.records;
    const std::string load = state.total ? fmt::format("tension {:.6g} kN", *state.total / 1e3)
                                         : fmt::format("drawn by {:.6g} mm", state.elongation.value_or(0));
    failed.reason = fmt::format("{}, {}: {}", ladder.records.back().grid, load, ladder.finest.sentence);
    note_sag(transition_, state, failed);
    note_bulk(transition_, state, failed);
    return failed;
}

StateResult StateSolver::recover(const CoarseState& coarse, const GridLadder& ladder) {
    SolverTimes times;
    StateResult result = timed(times.recovery, [&] {
        return recover_state(transition_, coarse.state, ladder.finest.model, ladder.finest.points, ladder.readings);
    });
    account(times);
    result.status = SolveStatus::converged;
    result.reason = ladder.finest.sentence;
    result.newton = ladder.records;
    if (ladder.below)
        add_differences(transition_, coarse.state, result, judged_of(coarse.state, *ladder.below, ladder.of_below), result);
    note_accuracy(transition_, coarse.state, ladder.why_stopped, result);
    return result;
}

StateResult StateSolver::judged_of(const TensionState& state, const GridSolution& solution, const Readings& readings) const {
    return recover_judged(transition_, state, solution.model, solution.points, readings);
}

// The difference between far ends is the other error estimate.
void StateSolver::add_far_end(const CoarseState& coarse, StateResult& result) const {
    if (coarse.nearer) {
        result.newton.push_back(coarse.nearer->record);
        estimate_far_end(result, coarse.readings, coarse.nearer_readings);
        add_differences(transition_, coarse.state, coarse.judged, coarse.nearer_judged, result);
    } else if (transition_.layout.trough.support == Support::rolls) {
        result.notes.push_back("the longer trough did not converge: no far-end error");
    }
}

// `lowest`: of the coarse grid; where its sign is in doubt, or the shape another, it is found again on the finest.
void StateSolver::add_stability(const CoarseState& coarse, const GridSolution& finest, BeltStability lowest,
                                StateResult& result) {
    SolverTimes times;
    const bool in_doubt = near_instability(transition_, coarse.state, lowest) || moved_on(finest);
    const GridSolution& grid = in_doubt ? finest : coarse.solution;
    if (in_doubt) lowest = stability_of(coarse.state, grid);
    timed(times.recovery, [&] { store_stability(lowest, grid.model.patch, result); });
    account(times);
    note_instability(lowest, transition_.settings.model, result);
}

StateResult StateSolver::finish(CoarseState& coarse) {
    const GridSolution& finest = coarse.ladder->finest;
    if (!finest.converged) return not_converged(coarse, *coarse.ladder);
    StateResult result = std::move(coarse.result);
    add_far_end(coarse, result);
    add_stability(coarse, finest, std::move(coarse.lowest), result);
    note_run_on(result);
    note_sag(transition_, coarse.state, result);
    note_sets(transition_.layout, endless_, result);
    note_bulk(transition_, coarse.state, result);
    if (!finest.model.beyond) note_floating_end(transition_.layout, sets_, result);
    if (endless_) note_running_trough(finest.model, result);
    result.others = std::move(coarse.reported_others);
    note_others(result);
    return result;
}

}  // namespace swale
