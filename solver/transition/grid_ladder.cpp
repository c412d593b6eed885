#include "solver/transition/grid_ladder.h"

#include "mesh/belt_grid.h"
#include "solver/strain/readings.h"
#include "solver/transition/error_estimate.h"
#include "solver/transition/grid_difference.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string_view>
#include <utility>

namespace swale {

namespace {

constexpr int most_unknowns = 65000;  // a band of some 350 MB

// What the usual grid is for; for more, spans at the pulley's corner are shorter by as much, down to what is for this.
constexpr double usual_accuracy = 0.02, finest_by_accuracy = 0.005;

// A coarser grid is as fine there as the usual one.
double corner(double accuracy, double grid) {
    return std::clamp(accuracy, finest_by_accuracy, usual_accuracy) / usual_accuracy / std::max(1.0, grid);
}

Excess excess_of(const GridTask& task, const GridLadder& ladder) {
    return discretisation_excess(task.transition, task.state, ladder.readings);
}

Patch grid_with(const TransitionCase& transition, int sets, double corner) {
    const Section& section = transition.belt.section;
    const bool half = transition.settings.model == Symmetry::half;
    if (half && !transition.layout.same_left_and_right())
        throw std::invalid_argument("half a belt can't tell the whole on wings of unequal length");
    return belt_grid(transition.layout,
                     {sets, section.underside, transition.settings.grid, half, boundary_layers(section), corner});
}

}  // namespace

Patch halved(const Patch& patch) {
    return {patch.along.halved(), patch.across.halved()};
}

GridSolution solve_finer(const GridTask& task, const GridSolution& known, const NewtonWatcher& watcher, NewtonTimes& times,
                         CarriedCorrection* carried) {
    // The belt's own patch, whose breaks are equal to the bit, as a refinement needs.
    const Patch own = halved(known.model.patch);
    const GridStart refined = [&](const Patch&) { return known.model.patch.refine(known.points, own); };
    return solve_carrying(task, refined, watcher, times, carried);
}

Patch coarse_grid(const TransitionCase& transition, int sets) {
    return grid_with(transition, sets, corner(transition.settings.accuracy, transition.settings.grid));
}

Readings readings_of(const TransitionCase& transition, const GridSolution& solution) {
    return take_readings(transition, solution.model, solution.points);
}

GridLadder lowest_rung(const TransitionCase& transition, const GridSolution& coarse) {
    GridLadder ladder{coarse, readings_of(transition, coarse), {}, {}, 0, {coarse.record}};
    estimate_discretisation(ladder.readings, {}, 0);
    return ladder;
}

namespace {

void go_on_from(const GridLadder& ladder, Patch patch_in_space, const std::string& phase, GridTask& task) {
    task.patch_in_space = std::move(patch_in_space);
    task.scale = ladder.finest.model.scale;
    task.known_trough = ladder.finest.model.beyond;
    task.phase = phase;
}

// Every span halved once more. If that does not converge the ladder stays as it is, but for the record; the failed one is
// given.
std::optional<GridSolution> halve(GridTask& task, GridLadder& ladder, const std::string& phase, const ProgressWatch& watch,
                                  NewtonTimes& times, CarriedCorrection* carried = nullptr) {
    go_on_from(ladder, halved(task.patch_in_space), phase, task);
    task.tolerance = NewtonSettings{}.tolerance;
    GridSolution finer = solve_finer(task, ladder.finest, watch(phase), times, carried);
    ladder.records.push_back(finer.record);
    if (!finer.converged) return finer;
    ladder.below = std::exchange(ladder.finest, std::move(finer));
    ladder.of_below = std::exchange(ladder.readings, readings_of(task.transition, ladder.finest));
    const Readings difference =
        grid_difference(task.transition, ladder.finest, ladder.readings, *ladder.below, ladder.of_below);
    estimate_discretisation(ladder.readings, difference, ++ladder.halvings);
    return {};
}

// Whether it is the edge's peak beside the pulley that is not accurate enough, and the corner may be finer.
bool corner_decides(const GridTask& task, const GridLadder& ladder) {
    const Excess excess = excess_of(task, ladder);
    const bool at_edge = excess.name != nullptr && std::string_view(excess.name).starts_with("edge");
    const double x = ladder.readings.edge_strain_max.x;
    return at_edge && x < task.transition.layout.belt_width / 4 && task.transition.settings.accuracy > finest_by_accuracy;
}

// The belt as it was solved on another grid.
GridStart as_solved(const GridSolution& known) {
    return [&known](const Patch& patch) {
        const CubicBasis& along = known.model.patch.along;
        return patch.interpolate([&](double x, double y) {
            return known.model.patch.jet(known.points, std::clamp(x, along.begin(), along.end()), y).position;
        });
    };
}

// A coarse grid with the finest corner and its halving, at a tenth of the cost of a second halving of all spans.
void sharpen_corner(GridTask& task, const GridTask& coarse_task, GridLadder& ladder, const ProgressWatch& watch,
                    NewtonTimes& times) {
    const double finest = corner(finest_by_accuracy, task.transition.settings.grid);
    GridTask sharper = coarse_task;
    sharper.tolerance = NewtonSettings{}.tolerance;  // its start differs from half to full model, its length must not
    go_on_from(ladder, grid_with(task.transition, task.sets, finest), "coarse grid, finer corner", sharper);
    const GridSolution coarse = solve_grid(sharper, as_solved(ladder.finest), watch(sharper.phase), times);
    ladder.records.push_back(coarse.record);
    if (!coarse.converged) return;
    GridLadder sharpened = lowest_rung(task.transition, coarse);
    sharpened.records = ladder.records;
    const bool failed = halve(sharper, sharpened, "fine grid, finer corner", watch, times).has_value();
    ladder.records = sharpened.records;
    if (failed) return;
    ladder = std::move(sharpened);
    task.patch_in_space = sharper.patch_in_space;
}

}  // namespace

GridLadder climb(const GridTask& coarse_task, const GridSolution& coarse, const ProgressWatch& watch, NewtonTimes& times,
                 CarriedCorrection* carried) {
    GridTask task = coarse_task;
    GridLadder ladder = lowest_rung(task.transition, coarse);
    if (auto failed = halve(task, ladder, "fine grid", watch, times, carried)) {
        ladder.finest = *std::move(failed);
        return ladder;
    }
    if (corner_decides(task, ladder)) sharpen_corner(task, coarse_task, ladder, watch, times);
    while (excess_of(task, ladder).name != nullptr) {
        if (4 * ladder.finest.record.unknowns > most_unknowns) {
            ladder.why_stopped = fmt::format("the next finer grid has more than {} unknowns", most_unknowns);
            break;
        }
        if (const auto failed = halve(task, ladder, fmt::format("finer grid {}", ladder.halvings + 1), watch, times)) {
            ladder.why_stopped = "the next finer grid did not converge: " + failed->sentence;
            break;
        }
    }
    return ladder;
}

}  // namespace swale
