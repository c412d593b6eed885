#include "solver/design/trial.h"

#include "solver/criteria/criteria.h"
#include "solver/design/state_tangent.h"
#include "solver/transition/cold_start.h"
#include "solver/transition/path_map.h"
#include "solver/transition/state_errors.h"
#include "solver/transition/state_solver.h"
#include "solver/transition/workers.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <numeric>
#include <utility>

namespace swale {

namespace {

// Residual that is enough of a grid from which a finer one starts.
constexpr double rough = 1e-6;

GridTask coarse_task(const TransitionCase& transition, const TensionState& state, int sets, bool endless) {
    return {transition, state,           sets,   coarse_grid(transition, sets), first_scale(transition, state), "coarse grid",
            rough,      points_per_span, endless};
}

// The belt of another arrangement, carried along with pulley and sets.
GridStart carried_along(const GridSolution& known, const PathMap& map, double scale) {
    return [&known, map, scale](const Patch& patch) {
        const CubicBasis& along = known.model.patch.along;
        return patch.interpolate([&](double x, double y) -> Eigen::Vector3d {
            const double path = x / scale, before = std::clamp(map.from(path) * known.model.scale, along.begin(), along.end());
            const PathMap::Shift shift = map.shift(path);
            return known.model.patch.jet(known.points, before, y).position + Eigen::Vector3d(shift.x, 0, shift.z);
        });
    };
}

}  // namespace

const Headroom* Trial::least() const {
    const auto least = std::ranges::min_element(headrooms, {}, &Headroom::share);
    return least == headrooms.end() ? nullptr : &*least;
}

double Trial::headroom() const {
    if (!solved()) return -1;
    return least() ? least()->share : std::numeric_limits<double>::infinity();
}

std::string Trial::binding() const {
    if (!solved()) return why_none;
    return least() ? least()->name() : "no criterion is judged";
}

Trials::Trials(const TransitionCase& given, ProgressListener listener)
    : listener_(std::move(listener)),
      sets_(given.layout.first_sets()),
      endless_(given.layout.trough.support == Support::rolls && !given.layout.trough.sets),
      far_end_(given.states.size(), FarEndShares{}) {}

std::vector<std::size_t> Trials::all_states() const {
    std::vector<std::size_t> states(far_end_.size());
    std::iota(states.begin(), states.end(), 0);
    return states;
}

// From the arrangement before; where there is none or that fails, cold.
GridSolution Trials::coarse_solution(const TransitionCase& arranged, std::size_t k) const {
    GridTask task = coarse_task(arranged, arranged.states[k], sets_, endless_);
    NewtonTimes times;
    const auto near = last_.find(k);
    if (near != last_.end()) {
        const double underside = arranged.belt.section.underside;
        const auto map = PathMap::between(near->second.layout, arranged.layout, sets_, underside);
        task.scale = near->second.coarse.model.scale;
        if (map) {
            GridSolution warm = solve_grid(task, carried_along(near->second.coarse, *map, task.scale), {}, times);
            if (warm.converged) return warm;
        }
        task.scale = first_scale(arranged, arranged.states[k]);
    }
    return solve_cold(task, {}, times);
}

void Trials::add_headrooms(const TransitionCase& arranged, std::size_t k, const GridLadder& ladder,
                           const std::vector<Parameter>& slopes_by, TrialState& trial) const {
    const TensionState& state = arranged.states[k];
    const GridSolution& finest = ladder.finest;
    StateResult result = recover_judged(arranged, state, finest.model, finest.points, ladder.readings);
    if (ladder.below)
        add_differences(arranged, state, result,
                        recover_judged(arranged, state, ladder.below->model, ladder.below->points, ladder.of_below), result);
    for (std::size_t i = 0; i < far_end_[k].size(); ++i)
        result.all()[i]->far_end_error = far_end_[k][i] * std::abs(result.all()[i]->value);
    const std::vector<Judgement> judgements = judge_state(arranged, state, result);
    const double edge_tension = result.edge_tension_max.value;
    std::vector<std::size_t> judged;
    for (std::size_t j = 0; j < judgements.size(); ++j)
        if (const auto headroom = headroom_of(judgements[j], edge_tension)) {
            trial.headrooms.push_back(*headroom);
            judged.push_back(j);
        }
    if (slopes_by.empty()) return;
    const StateTangent tangent(arranged, state, sets_, finest.model, finest.points);
    if (!tangent.why_none().empty()) return;
    for (const Parameter& parameter : slopes_by) {
        const auto derivatives = tangent.derivatives(parameter);
        for (std::size_t i = 0; i < judged.size(); ++i) {
            const double derivative = derivatives[judged[i]].value_or(0);
            trial.headrooms[i].slopes.push_back(headroom_slope(judgements[judged[i]], edge_tension, derivative));
        }
    }
}

GridLadder Trials::ladder_of(const TransitionCase& arranged, std::size_t k, const GridSolution& coarse, TrialGrid grid) const {
    if (grid == TrialGrid::coarse) return lowest_rung(arranged, coarse);
    NewtonTimes times;
    GridTask task = coarse_task(arranged, arranged.states[k], sets_, endless_);
    task.scale = coarse.model.scale;
    return climb(
        task, coarse, [](const std::string&) { return NewtonWatcher(); }, times);
}

TrialState Trials::solved(const TransitionCase& arranged, std::size_t k, const std::vector<Parameter>& slopes_by,
                          TrialGrid grid) const {
    TrialState trial{arranged.layout, coarse_solution(arranged, k), {}, ""};
    const TensionState& state = arranged.states[k];
    if (!trial.coarse.converged) {
        trial.why_none = fmt::format("\"{}\" has no solution: {}", state.name, trial.coarse.sentence);
        return trial;
    }
    const GridLadder ladder = ladder_of(arranged, k, trial.coarse, grid);
    if (ladder.finest.converged)
        add_headrooms(arranged, k, ladder, slopes_by, trial);
    else
        trial.why_none = fmt::format("\"{}\" has no solution: {}", state.name, ladder.finest.sentence);
    return trial;
}

Trial Trials::of(const TransitionCase& arranged, const std::vector<std::size_t>& states,
                 const std::vector<Parameter>& slopes_by, TrialGrid grid) {
    Workers workers;
    std::vector<std::future<TrialState>> solving;
    for (const std::size_t k : states) solving.push_back(workers.run([&, k] { return solved(arranged, k, slopes_by, grid); }));
    Trial trial;
    std::vector<TrialState> done;
    for (std::future<TrialState>& state : solving) done.push_back(state.get());
    for (std::size_t i = 0; i < states.size(); ++i) {
        std::ranges::copy(done[i].headrooms, std::back_inserter(trial.headrooms));
        if (trial.why_none.empty()) trial.why_none = done[i].why_none;
        if (done[i].coarse.converged) last_.insert_or_assign(states[i], std::move(done[i]));
        ++states_solved_;
    }
    if (listener_) listener_({fmt::format("trial {}", states_solved_), "sizing", 0, 0});
    return trial;
}

TransitionResult Trials::whole(const TransitionCase& arranged) {
    TransitionResult result = solve_transition(arranged, listener_);
    ++whole_solutions_;
    if (result.sets != sets_) last_.clear();
    sets_ = result.sets;
    for (std::size_t k = 0; k < result.states.size(); ++k)
        for (std::size_t i = 0; i < far_end_[k].size(); ++i) {
            const Reading& reading = *result.states[k].all()[i];
            const double value = std::abs(reading.value);
            far_end_[k][i] = value > 0 ? reading.far_end_error.value_or(0) / value : 0;
        }
    return result;
}

Trial as_trial(const TransitionResult& result) {
    Trial trial;
    for (const StateResult& state : result.states) {
        if (state.status != SolveStatus::converged) {
            if (trial.why_none.empty()) trial.why_none = fmt::format("\"{}\" has no solution: {}", state.name, state.reason);
            continue;
        }
        for (const Judgement& judgement : result.criteria)
            if (judgement.state == state.name || judgement.state.starts_with(state.name + ", other shape "))
                if (auto headroom = headroom_of(judgement, state.edge_tension_max.value))
                    trial.headrooms.push_back(std::move(*headroom));
    }
    return trial;
}

}  // namespace swale
