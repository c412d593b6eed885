#include "solver/transition/state_solver.h"

#include "solver/equilibrium/stopwatch.h"
#include "solver/strain/readings.h"
#include "solver/transition/cold_start.h"
#include "solver/transition/continued_start.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/tension_path.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

// Sets more in an endless trough, to see what they change.
int more_sets(int sets) {
    return sets + std::max(2, sets / 2);
}

constexpr int most_sets = 40;

// Residual that is enough where only the difference to another grid is wanted.
constexpr double rough = 1e-6;

}  // namespace

StateSolver::StateSolver(const TransitionCase& transition, ProgressListener listener)
    : transition_(transition),
      sets_(transition.layout.first_sets()),
      endless_(transition.layout.trough.support == Support::rolls && !transition.layout.trough.sets),
      listener_(std::move(listener)),
      coarse_patch_(coarse_grid(transition, sets_)) {}

std::vector<StateResult> StateSolver::solve(const std::vector<TensionState>& states) {
    workers_.give([&] { solve_coarse_chain(states); }, Turn::first);
    workers_.finish();
    while (too_near_) {
        lengthen();
        for (CoarseState& coarse : coarse_) workers_.give([&] { follow_lowest(coarse); }, Turn::first);
        workers_.finish();
    }
    std::vector<StateResult> results;
    for (CoarseState& coarse : coarse_) results.push_back(finish(coarse));
    return results;
}

GridTask StateSolver::coarse_task(const TensionState& state, double scale) const {
    return {transition_, state, sets_, coarse_patch_, scale, "coarse grid", rough, points_per_span, endless_};
}

// From the last state that converged, or cold.
GridSolution StateSolver::solve_coarse(const TensionState& state) {
    SolverTimes times;
    const double scale = first_scale(transition_, state);
    const auto neighbour = std::find_if(coarse_.rbegin(), coarse_.rend(), [](const auto& c) { return c.solution.converged; });
    std::optional<GridSolution> solution;
    if (neighbour != coarse_.rend()) {
        const double longer_by = scale / first_scale(transition_, neighbour->state);  // the strips' difference in strain
        const GridTask task = coarse_task(state, neighbour->solution.model.scale * longer_by);
        const auto warm = [&](const Patch&) { return neighbour->solution.points; };
        solution = solve_grid(task, warm, watcher(state, task.phase), times.newton);
    }
    if (!solution || !solution->converged) {
        const GridTask task = coarse_task(state, scale);
        solution = solve_cold(task, watcher(state, task.phase), times.newton);
    }
    account(times);
    return std::move(*solution);
}

StateSolver::CoarseState& StateSolver::add_coarse(const TensionState& state) {
    CoarseState& coarse = coarse_.emplace_back(CoarseState{state, solve_coarse(state)});
    if (coarse.solution.converged) coarse.readings = readings_of(transition_, coarse.solution);
    return coarse;
}

// One state after the other; beside it what follows from those that are known.
void StateSolver::solve_coarse_chain(const std::vector<TensionState>& states) {
    coarse_.reserve(states.size());
    for (const TensionState& state : states) {
        CoarseState& coarse = add_coarse(state);
        // The chain goes on from the shape that it has found, which another may replace.
        if (!slack(coarse)) workers_.give([this, &coarse] { follow(coarse); }, Turn::first);
    }
    for (CoarseState& coarse : coarse_)
        if (slack(coarse)) workers_.give([this, &coarse] { follow_lowest(coarse); }, Turn::first);
}

// Of a slack belt from the shape of least energy.
void StateSolver::follow_lowest(CoarseState& coarse) {
    if (slack(coarse)) look_for_others(coarse);
    follow(coarse);
}

// What comes of a coarse grid; nothing more is begun where the far end is too near in this or another state.
void StateSolver::follow(CoarseState& coarse) {
    workers_.give([this, &coarse] { climb_from(coarse); });
    workers_.give([this, &coarse] { find_lowest(coarse); }, Turn::last);
    solve_nearer_end(coarse);
    if (wants_more_sets(coarse)) too_near_ = true;
}

bool StateSolver::slack(const CoarseState& coarse) {
    return coarse.solution.converged && swale::slack(coarse.readings);
}

// From other starts.
void StateSolver::look_for_others(CoarseState& coarse) {
    SolverTimes times;
    const GridTask task = coarse_task(coarse.state, coarse.solution.model.scale);
    const NewtonWatcher watch = watcher(coarse.state, "other start");
    coarse.others = other_equilibria(task, coarse.solution, transition_.settings.starts, watch, times.newton);
    put_lowest_first(task, coarse.solution, coarse.others);
    coarse.readings = readings_of(transition_, coarse.solution);
    account(times);
}

// An endless trough with more sets before what is linearised; in place of a symmetry plane the endless trough.
void StateSolver::solve_nearer_end(CoarseState& coarse, CarriedCorrection* carried) {
    coarse.nearer.reset();
    if (transition_.layout.trough.support == Support::held || !coarse.solution.converged) return;
    SolverTimes times;
    GridTask task = coarse_task(coarse.state, coarse.solution.model.scale);
    task.phase = "longer trough";
    task.endless = true;
    task.known_trough = coarse.solution.model.beyond;
    if (endless_) {
        task.sets = more_sets(sets_);
        task.patch_in_space = coarse_grid(transition_, task.sets);
        task.scale = continued_scale(transition_, coarse.solution, sets_, task.sets);
    }
    const GridStart start = continued_start(coarse.solution, transition_.layout.trough.spacing);
    GridSolution nearer = solve_carrying(task, start, watcher(coarse.state, task.phase), times.newton, carried);
    account(times);
    if (!nearer.converged) return;
    coarse.nearer_readings = readings_of(transition_, nearer);
    coarse.judged = judged_of(coarse.state, coarse.solution, coarse.readings);
    coarse.nearer_judged = judged_of(coarse.state, nearer, coarse.nearer_readings);
    coarse.nearer = std::move(nearer);
}

bool StateSolver::wants_more_sets(const CoarseState& coarse) const {
    if (!endless_ || !coarse.nearer || more_sets(sets_) > most_sets) return false;
    Readings readings = coarse.readings;
    estimate_far_end(readings, readings, coarse.nearer_readings);
    return far_end_excess(transition_, coarse.state, readings).name != nullptr;
}

// The longer trough becomes the one that is reported.
void StateSolver::lengthen() {
    too_near_ = false;
    sets_ = more_sets(sets_);
    coarse_patch_ = coarse_grid(transition_, sets_);
    for (CoarseState& coarse : coarse_) {
        if (coarse.nearer) {
            coarse.solution = std::move(*coarse.nearer);
            coarse.readings = coarse.nearer_readings;
        } else {
            coarse.solution.converged = false;  // it may have, but on the shorter trough's grid
        }
    }
    for (CoarseState& coarse : coarse_)
        if (!coarse.nearer) solve_coarse_anew(coarse);
}

void StateSolver::solve_coarse_anew(CoarseState& coarse) {
    coarse.solution = solve_coarse(coarse.state);
    if (coarse.solution.converged) coarse.readings = readings_of(transition_, coarse.solution);
}

void StateSolver::climb_from(CoarseState& coarse, CarriedCorrection* carried) {
    if (too_near_) return;
    SolverTimes times;
    const auto watch = [&](const std::string& phase) { return watcher(coarse.state, phase); };
    const GridTask task = coarse_task(coarse.state, coarse.solution.model.scale);
    coarse.ladder = coarse.solution.converged ? climb(task, coarse.solution, watch, times.newton, carried)
                                              : GridLadder{coarse.solution, {}, {}, {}, 0, {coarse.solution.record}};
    account(times);
    if (coarse.ladder->finest.converged) coarse.result = recover(coarse, *coarse.ladder);
}

void StateSolver::find_lowest(CoarseState& coarse) {
    if (too_near_) return;
    coarse.lowest = stability_of(coarse.state, coarse.solution);
    coarse.reported_others = report_others(coarse);
}

BeltStability StateSolver::stability_of(const TensionState& state, const GridSolution& solution) {
    if (!solution.converged) return {};
    SolverTimes times;
    tell({state.name, "stability", 0, 0});
    const BeltStability lowest =
        timed(times.stability, [&] { return stability_of_belt(transition_, state, solution.model, solution.points); });
    account(times);
    return lowest;
}

std::vector<OtherEquilibrium> StateSolver::report_others(const CoarseState& coarse) {
    SolverTimes times;
    std::vector<OtherEquilibrium> others;
    for (const OtherSolution& other : coarse.others)
        others.push_back(timed(times.stability, [&] { return reported(transition_, coarse.state, other); }));
    account(times);
    return others;
}

TensionPath StateSolver::path() {
    if (transition_.settings.tension_path == 0) return {};
    SolverTimes times;
    TensionPath path = tension_path(transition_, sets_, coarse_patch_, endless_, transition_.settings.tension_path,
                                    watcher({"tension path", {}, {}}, "coarse grid"), times.newton);
    account(times);
    return path;
}

NewtonWatcher StateSolver::watcher(const TensionState& state, const std::string& phase) {
    return [this, name = state.name, phase](int iteration, double residual) { tell({name, phase, iteration, residual}); };
}

void StateSolver::tell(const ProgressEvent& event) {
    const std::lock_guard lock(telling_);
    if (listener_) listener_(event);
}

void StateSolver::account(const SolverTimes& times) {
    const std::lock_guard lock(telling_);
    times_ += times;
}

SolverTimes& SolverTimes::operator+=(const SolverTimes& other) {
    newton += other.newton;
    stability += other.stability;
    recovery += other.recovery;
    return *this;
}

}  // namespace swale
