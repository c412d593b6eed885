#include "solver/transition.h"

#include "solver/criteria/criteria.h"
#include "solver/equilibrium/stopwatch.h"
#include "solver/transition/restored_model.h"
#include "solver/transition/state_solver.h"

#include <fmt/core.h>
#include <sys/resource.h>

#include <algorithm>

namespace swale {

namespace {

// Largest resident memory of the process so far; Linux counts kB.
double peak_memory_MB() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

void add_cost(const StateSolver& solver, TransitionResult& result) {
    Cost& cost = result.cost;
    for (const StateResult& state : result.states)
        for (const NewtonRecord& record : state.newton) {
            cost.newton_iterations += record.iterations;
            cost.degrees_of_freedom = std::max(cost.degrees_of_freedom, record.unknowns);
        }
    cost.assembly_seconds = solver.times().newton.terms.shell;
    cost.contact_seconds = solver.times().newton.terms.contact;
    cost.factorisation_seconds = solver.times().newton.factorisation;
    cost.recovery_seconds = solver.times().recovery;
    cost.stability_seconds = solver.times().stability;
    cost.peak_memory_MB = peak_memory_MB();
}

}  // namespace

TransitionResult solve_transition(const TransitionCase& transition, const ProgressListener& listener) {
    TransitionResult result;
    StateSolver solver(transition, listener);
    timed(result.cost.seconds, [&] { result.states = solver.solve(transition.states); });
    result.path = solver.path();
    result.sets = solver.sets();
    result.criteria = judge(transition, result.states);
    result.rolls = all_rolls(transition.layout, result.sets, transition.belt.section.underside);
    add_cost(solver, result);
    return result;
}

StateResult restore_state(const TransitionCase& transition, int sets, const TensionState& state, const BeltShape& shape) {
    const BeltModel model = restored_model(transition, sets, state, shape);
    StateResult result = recover_state(transition, state, model, shape.control_points);
    const ControlPoints gradient = model.system.full_gradient(shape.control_points);
    const double residual = model.system.supports().restrict(gradient).norm() / gradient.norm();
    result.reason = fmt::format("restored: residual {:.1e}", residual);
    return result;
}

}  // namespace swale
