#include "solver/transition/grid_ladder.h"

#include "mesh/belt_grid.h"
#include "solver/strain/readings.h"
#include "solver/transition/error_estimate.h"

#include <fmt/core.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

constexpr int most_unknowns = 65000;  // a band of some 350 MB

// What the usual grid is for; for more, spans at the pulley's corner are shorter by as much, down to this share.
constexpr double usual_accuracy = 0.02, shortest_at_corner = 0.25;

// A coarser grid is as fine there as the usual one.
double corner(double accuracy, double grid) {
    return std::clamp(accuracy / usual_accuracy, shortest_at_corner, 1.0) / std::max(1.0, grid);
}

bool accurate(const GridTask& task, const GridLadder& ladder) {
    Readings readings = readings_of(task.transition, ladder.finest);
    estimate_discretisation(readings, ladder.coarser, ladder.halvings);
    return discretisation_excess(task.transition, task.state, readings).name == nullptr;
}

}  // namespace

Patch halved(const Patch& patch) {
    return {patch.along.halved(), patch.across.halved()};
}

GridSolution solve_finer(const GridTask& task, const GridSolution& known, const NewtonWatcher& watcher, NewtonTimes& times) {
    // The belt's own patch, whose breaks are equal to the bit, as a refinement needs.
    const Patch own = halved(known.model.patch);
    return solve_grid(
        task, [&](const Patch&) { return known.model.patch.refine(known.points, own); }, watcher, times);
}

Patch coarse_grid(const TransitionCase& transition, int sets) {
    const Section& section = transition.belt.section;
    const bool half = transition.settings.model == Symmetry::half;
    if (half && !transition.layout.same_left_and_right())
        throw std::invalid_argument("half a belt can't tell the whole on wings of unequal length");
    const double grid = transition.settings.grid;
    return belt_grid(transition.layout, {sets, section.underside, grid, half, boundary_layers(section),
                                         corner(transition.settings.accuracy, grid)});
}

Readings readings_of(const TransitionCase& transition, const GridSolution& solution) {
    const Section& section = transition.belt.section;
    return take_readings(BeltProbe(solution.model.patch, solution.points, section), transition.layout, section, solution.model);
}

GridLadder climb(const GridTask& coarse_task, const GridSolution& coarse, const ProgressWatch& watch, NewtonTimes& times) {
    GridTask task = coarse_task;
    GridLadder ladder{coarse, {}, 0, {coarse.record}, {}};
    for (int halvings = 1;; ++halvings) {
        task.patch_in_space = halved(task.patch_in_space);
        task.scale = ladder.finest.model.scale;
        task.known_trough = ladder.finest.model.beyond;
        task.phase = halvings == 1 ? "fine grid" : fmt::format("finer grid {}", halvings);
        task.tolerance = NewtonSettings{}.tolerance;
        GridSolution finer = solve_finer(task, ladder.finest, watch(task.phase), times);
        ladder.records.push_back(finer.record);
        if (!finer.converged && halvings > 1) {
            ladder.why_stopped = "the next finer grid did not converge: " + finer.sentence;
            return ladder;
        }
        ladder.coarser = readings_of(task.transition, ladder.finest);
        ladder.finest = std::move(finer);
        ladder.halvings = halvings;
        if (!ladder.finest.converged || accurate(task, ladder)) return ladder;
        if (4 * ladder.finest.record.unknowns > most_unknowns) {
            ladder.why_stopped = fmt::format("the next finer grid has more than {} unknowns", most_unknowns);
            return ladder;
        }
    }
}

}  // namespace swale
