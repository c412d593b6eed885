#include "benchmarks/published/nested_reference.h"

#include "mesh/belt_grid.h"
#include "solver/transition/cold_start.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/grid_ladder.h"

#include <utility>

namespace swale::benchmark {

namespace {

constexpr double rough = 1e-6;  // residual of all grids but the finest

Patch halved(const Patch& patch) {
    return {patch.along.halved(), patch.across.halved()};
}

GridTask coarse_task(const TransitionCase& transition) {
    const Section& section = transition.belt.section;
    const int sets = transition.layout.trough.sets.value();
    const bool half = transition.settings.model == Symmetry::half;
    const Patch patch =
        belt_grid(transition.layout, {sets, section.underside, transition.settings.grid, half, boundary_layers(section)});
    return {transition, transition.states[0], sets, patch, first_scale(transition, transition.states[0]), "reference", rough};
}

GridSolution solve_halved(GridTask& task, const GridSolution& known, NewtonTimes& times) {
    task.patch_in_space = halved(task.patch_in_space);
    task.scale = known.model.scale;
    const Patch own = halved(known.model.patch);
    return solve_grid(
        task, [&](const Patch&) { return known.model.patch.refine(known.points, own); }, {}, times);
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
        solution = solve_halved(task, solution, times);
        ++reference.halvings;
    }
    if (!solution.converged || reference.halvings == 0) return {};
    reference.readings = readings_of(transition, solution);
    reference.unknowns = solution.record.unknowns;
    estimate_discretisation(reference.readings, coarser, reference.halvings);
    return reference;
}

}  // namespace swale::benchmark
