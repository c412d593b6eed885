#include "benchmarks/published/nested_reference.h"

#include "solver/transition/cold_start.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/grid_ladder.h"

namespace swale::benchmark {

namespace {

constexpr double rough = 1e-6;  // residual of all grids but the finest

GridTask coarse_task(const TransitionCase& transition) {
    const int sets = transition.layout.trough.sets.value();
    const TensionState& state = transition.states[0];
    return {transition, state, sets, coarse_grid(transition, sets), first_scale(transition, state), "reference", rough};
}

}  // namespace

std::optional<NestedReference> nested_reference(const TransitionCase& transition, int halvings, int most_unknowns) {
    NewtonTimes times;
    GridTask task = coarse_task(transition);
    GridSolution solution = solve_cold(task, {}, times);
    NestedReference reference;
    Readings coarser;
    while (solution.converged && reference.halvings < halvings && 4 * solution.record.unknowns <= most_unknowns) {
        coarser = readings_of(transition, solution);
        task.patch_in_space = halved(task.patch_in_space);
        task.scale = solution.model.scale;
        solution = solve_finer(task, solution, {}, times);
        ++reference.halvings;
    }
    if (!solution.converged || reference.halvings == 0) return {};
    reference.readings = readings_of(transition, solution);
    reference.unknowns = solution.record.unknowns;
    estimate_discretisation(reference.readings, coarser, reference.halvings);
    return reference;
}

}  // namespace swale::benchmark
