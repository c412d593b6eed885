#include "benchmarks/published/nested_reference.h"

#include "solver/transition/cold_start.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/grid_difference.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/other_equilibria.h"

#include <utility>

namespace swale::benchmark {

namespace {

constexpr double rough = 1e-6;  // residual of all grids but the finest

GridTask coarse_task(const TransitionCase& transition) {
    const int sets = transition.layout.trough.sets.value();
    const TensionState& state = transition.states[0];
    return {transition, state, sets, coarse_grid(transition, sets), first_scale(transition, state), "reference", rough};
}

// The shape that the program goes on with.
GridSolution lowest_equilibrium(const GridTask& task, NewtonTimes& times) {
    GridSolution solution = solve_cold(task, {}, times);
    if (!solution.converged || !slack(readings_of(task.transition, solution))) return solution;
    auto others = other_equilibria(task, solution, task.transition.settings.starts, {}, times);
    put_lowest_first(task, solution, others);
    return solution;
}

}  // namespace

std::optional<NestedReference> nested_reference(const TransitionCase& transition, int halvings, int most_unknowns) {
    NewtonTimes times;
    GridTask task = coarse_task(transition);
    GridSolution solution = lowest_equilibrium(task, times);
    NestedReference reference;
    reference.readings = readings_of(transition, solution);
    Readings difference;
    while (solution.converged && reference.halvings < halvings && 4 * solution.record.unknowns <= most_unknowns) {
        const GridSolution coarser = solution;
        task.patch_in_space = halved(task.patch_in_space);
        task.scale = solution.model.scale;
        solution = solve_finer(task, coarser, {}, times);
        if (!solution.converged) break;
        const Readings of_coarser = std::exchange(reference.readings, readings_of(transition, solution));
        difference = grid_difference(transition, solution, reference.readings, coarser, of_coarser);
        ++reference.halvings;
    }
    if (!solution.converged || reference.halvings == 0) return {};
    reference.unknowns = solution.record.unknowns;
    estimate_discretisation(reference.readings, difference, reference.halvings);
    return reference;
}

}  // namespace swale::benchmark
