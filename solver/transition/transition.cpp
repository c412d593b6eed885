#include "solver/transition.h"

#include "solver/criteria/criteria.h"
#include "solver/equilibrium/stopwatch.h"
#include "solver/strain/readings.h"
#include "solver/transition/restored_model.h"
#include "solver/transition/state_solver.h"

#include <fmt/core.h>
#include <sys/resource.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace swale {

namespace {

// Largest resident memory of the process so far; Linux counts kB.
double peak_memory_MB() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

// `share` of the solver's times.
void add_cost(const StateSolver& solver, double share, TransitionResult& result) {
    Cost& cost = result.cost;
    for (const StateResult& state : result.states)
        for (const NewtonRecord& record : state.newton) {
            cost.newton_iterations += record.iterations;
            cost.degrees_of_freedom = std::max(cost.degrees_of_freedom, record.unknowns);
        }
    cost.assembly_seconds = share * solver.times().newton.terms.shell;
    cost.contact_seconds = share * solver.times().newton.terms.contact;
    cost.factorisation_seconds = share * solver.times().newton.factorisation;
    cost.recovery_seconds = share * solver.times().recovery;
    cost.stability_seconds = share * solver.times().stability;
    cost.peak_memory_MB = peak_memory_MB();
}

// What follows from the states.
void complete(const TransitionCase& transition, const StateSolver& solver, double share, TransitionResult& result) {
    result.sets = solver.sets();
    result.criteria = judge(transition, result.states);
    result.rolls = all_rolls(transition.layout, result.sets, transition.belt.section.underside);
    add_cost(solver, share, result);
}

}  // namespace

TransitionResult solve_transition(const TransitionCase& transition, const ProgressListener& listener) {
    TransitionResult result;
    StateSolver solver(transition, listener);
    timed(result.cost.seconds, [&] { result.states = solver.solve(transition.states); });
    result.path = solver.path();
    complete(transition, solver, 1, result);
    return result;
}

std::vector<TransitionResult> solve_tensions(const TransitionCase& transition) {
    std::vector<std::optional<StateResult>> states;
    StateSolver solver(transition, {});
    double seconds = 0;
    timed(seconds, [&] { states = solver.solve_in_turn(transition.states); });
    const double share = 1.0 / static_cast<double>(states.size());
    std::vector<TransitionResult> results;
    for (std::size_t k = 0; k < states.size(); ++k) {
        TransitionCase alone = transition;
        alone.states = {transition.states[k]};
        TransitionResult& result = results.emplace_back();
        if (states[k]) {
            result.states = {*std::move(states[k])};
            complete(alone, solver, share, result);
        } else {
            result = solve_transition(alone);
        }
        result.cost.seconds += share * seconds;
    }
    return results;
}

StateResult restore_state(const TransitionCase& transition, int sets, const TensionState& state, const BeltShape& shape) {
    const BeltModel model = restored_model(transition, sets, state, shape);
    StateResult result =
        recover_state(transition, state, model, shape.control_points, take_readings(transition, model, shape.control_points));
    const ControlPoints gradient = model.system.full_gradient(shape.control_points);
    const double residual = model.system.supports().restrict(gradient).norm() / gradient.norm();
    result.reason = fmt::format("restored: residual {:.1e}", residual);
    return result;
}

}  // namespace swale
