#include "solver/transition.h"

#include "mesh/belt_grid.h"
#include "solver/criteria/criteria.h"
#include "solver/equilibrium/stopwatch.h"
#include "solver/transition/run_on.h"
#include "solver/transition/state_solver.h"

#include <fmt/core.h>
#include <sys/resource.h>

#include <algorithm>
#include <stdexcept>

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

// The endless trough that the stored belt ended in; none where it ended at a plane or a held section.
std::shared_ptr<const EndlessTrough> trough_beyond(const TransitionCase& transition, const TensionState& state, int sets,
                                                   const Patch& patch, double scale) {
    const Trough& trough = transition.layout.trough;
    if (trough.sets || trough.support == Support::held) return {};
    NewtonTimes times;
    const Patch in_space{patch.along.scaled(1 / scale), patch.across};
    return endless_trough(transition, state, in_space, sets, points_per_span, {}, times).trough;
}

CubicBasis basis_of(const std::vector<double>& knots) {
    if (knots.size() < 8) throw std::invalid_argument("a stored knot vector has fewer than eight knots");
    return CubicBasis({knots.begin() + 3, knots.end() - 3});
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
    const Patch patch{basis_of(shape.knots_along), basis_of(shape.knots_across)};
    if (shape.control_points.cols() != patch.points())
        throw std::invalid_argument(
            fmt::format("{} stored control points for a grid of {}", shape.control_points.cols(), patch.points()));
    const double scale = patch.along.end() / path_length(transition.layout, sets);
    const BeltModel model = belt_model(
        transition, state, sets, patch, scale, points_per_span, trough_beyond(transition, state, sets, patch, scale),
        section_on_pulley(patch, shape.control_points), belt_bulk(transition, state, patch, scale, shape.control_points));
    StateResult result = recover_state(transition, state, model, shape.control_points);
    const ControlPoints gradient = model.system.full_gradient(shape.control_points);
    const double residual = model.system.supports().restrict(gradient).norm() / gradient.norm();
    result.status = SolveStatus::converged;
    result.reason = fmt::format("restored: residual {:.1e}", residual);
    return result;
}

}  // namespace swale
