#include "solver/transition/grid_solution.h"

#include "mesh/belt_grid.h"
#include "solver/transition/length_search.h"
#include "solver/transition/passage.h"
#include "solver/transition/run_on.h"

#include <fmt/core.h>

#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr int most_rounds = 8;
// Of the far end from its mid-span [mm]; spacings are above 500 mm. An endless trough takes the belt on from where it is, so
// that only the knots stand off the rolls by as much.
constexpr double largest_miss = 0.2, largest_endless_miss = 1;
// Of the stretch across the line of a steady run-on from one value.
constexpr double largest_departure = 1e-6;
// Of the bulk's forces from those that the solved shape asks for, as a share. They change by this much of what they do.
constexpr double largest_misfit = 1e-3;

Patch scaled(const Patch& patch, double scale) {
    return {patch.along.scaled(scale), patch.across};
}

NewtonOutcome run(const BeltModel& model, const ControlPoints& start, const GridTask& task, const NewtonWatcher& watcher,
                  NewtonTimes& times) {
    NewtonSettings settings;
    settings.iterations = task.transition.settings.newton_iterations;
    settings.tolerance = task.tolerance;
    return minimise(model.system, model.system.supports().project(start), settings, watcher, &times);
}

double allowed_miss(const GridTask& task) {
    return task.endless ? largest_endless_miss : largest_miss;
}

// How far the far plane lies beyond its mid-span; zero for a held one.
double miss(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    if (task.transition.layout.trough.support == Support::held) return 0;
    return model.far_end(points) - model_length(task.transition.layout, task.sets);
}

// How far a steady run-on is from being one; zero for a plane section.
double departure(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    if (task.transition.layout.pulley.run_on == RunOn::plane) return 0;
    const System free_section = free_section_system(task.transition, task.state, model);
    return run_on_departure(free_section, task.transition.belt.section, points);
}

// A steady run-on goes on from the section that the belt starts with.
std::optional<Eigen::Matrix2Xd> section_to_hold(const GridTask& task, const Patch& patch, const ControlPoints& start) {
    if (task.transition.layout.pulley.run_on == RunOn::plane) return {};
    return section_on_pulley(patch, start);
}

// The belt where the steady run-on takes its section; where no step is known, as it is.
ControlPoints towards_steady(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    const System free_section = free_section_system(task.transition, task.state, model);
    return run_on_step(free_section, task.transition.belt.section, points).value_or(points);
}

bool at_its_place(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    return std::abs(miss(task, model, points)) <= allowed_miss(task);
}

double misfit(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    return bulk_misfit(model.bulk, belt_bulk(task.transition, task.state, model.patch, model.scale, points));
}

// Why a converged solution is no answer; empty if it is one.
std::string why_wrong(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    const double beyond = miss(task, model, points);
    if (std::abs(beyond) > allowed_miss(task))
        return fmt::format("the far plane misses its mid-span by {:.2f} mm, more than {} mm, after {} rounds", beyond,
                           allowed_miss(task), most_rounds);
    if (const double uneven = departure(task, model, points); uneven > largest_departure)
        return fmt::format(
            "where the belt runs on its stretch departs by {:.1e} from one value, more than {:.0e}, after {} rounds", uneven,
            largest_departure, most_rounds);
    if (const double off = misfit(task, model, points); off > largest_misfit)
        return fmt::format("the bulk changes by {:.2g} of its forces as the belt gives way, more than {}, after {} rounds", off,
                           largest_misfit, most_rounds);
    return passage_through_rolls(model, points, task.transition.belt.section);
}

GridSolution without_trough(const GridTask& task, const EndlessTroughOutcome& beyond) {
    const NewtonOutcome& outcome = beyond.outcome;
    return {belt_model(task.transition, task.state, task.sets, scaled(task.patch_in_space, task.scale), task.scale,
                       task.gauss_points),
            {},
            {task.phase, static_cast<int>(outcome.q.size()), outcome.iterations, outcome.residual, outcome.tolerance},
            false,
            beyond.sentence};
}

BeltModel model_at(const GridTask& task, double scale, const ControlPoints& points,
                   const std::shared_ptr<const EndlessTrough>& trough) {
    const Patch patch = scaled(task.patch_in_space, scale);
    return belt_model(task.transition, task.state, task.sets, patch, scale, task.gauss_points, trough,
                      section_to_hold(task, patch, points), belt_bulk(task.transition, task.state, patch, scale, points));
}

// Whether another round is due; then with this length and this start.
bool corrected(const GridTask& task, const BeltModel& model, LengthSearch& search, double& scale, ControlPoints& points) {
    const bool missed = !at_its_place(task, model, points);
    const bool uneven = departure(task, model, points) > largest_departure;
    const bool shifted = misfit(task, model, points) > largest_misfit;
    if (missed) scale = search.next(scale, miss(task, model, points), model.far_end(points));
    if (uneven) points = towards_steady(task, model, points);
    return missed || uneven || shifted;
}

GridSolution told(const GridTask& task, BeltModel model, const ControlPoints& points, const NewtonOutcome& outcome,
                  int iterations) {
    const int unknowns = model.system.unknowns();
    const std::string wrong = outcome.converged ? why_wrong(task, model, points) : outcome.sentence;
    return {std::move(model),
            points,
            {task.phase, unknowns, iterations, outcome.residual, outcome.tolerance},
            outcome.converged && wrong.empty(),
            wrong.empty() ? outcome.sentence : wrong};
}

}  // namespace

GridSolution solve_grid(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times) {
    EndlessTroughOutcome beyond;
    if (task.endless) {
        beyond = endless_trough(task.transition, task.state, task.patch_in_space, task.sets, task.gauss_points,
                                task.known_trough, times);
        // Where the trough as it is condensed is not stable, a symmetry plane ends the belt.
        if (!beyond.outcome.converged) return without_trough(task, beyond);
    }
    LengthSearch search;
    double scale = task.scale;
    ControlPoints points = start(scaled(task.patch_in_space, scale));
    int iterations = 0;
    for (int round = 1;; ++round) {
        BeltModel model = model_at(task, scale, points, beyond.trough);
        const NewtonOutcome outcome = run(model, points, task, watcher, times);
        points = model.system.supports().expand(outcome.q);
        iterations += outcome.iterations;
        const bool again = outcome.converged && round < most_rounds && corrected(task, model, search, scale, points);
        if (!again) return told(task, std::move(model), points, outcome, iterations);
    }
}

}  // namespace swale
