#include "solver/transition/grid_solution.h"

#include "mesh/belt_grid.h"
#include "solver/transition/passage.h"

#include <fmt/core.h>

#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr int most_rounds = 6;
constexpr double largest_miss = 0.2;  // of the far end from its mid-span [mm]; spacings are above 500 mm

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

// How far the far plane lies beyond its mid-span; zero for a held one.
double miss(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    if (task.transition.layout.trough.support == Support::held) return 0;
    return model.far_end(points) - model_length(task.transition.layout, task.sets);
}

TroughBay bay_of(const GridTask& task, NewtonTimes& times) {
    const Patch half_bay = half_bay_of(task.transition.layout, task.patch_in_space, task.sets);
    return solve_trough_bay(task.transition, task.state, half_bay, first_scale(task.transition, task.state), task.gauss_points,
                            times);
}

// Why a converged solution is no answer; empty if it is one.
std::string why_wrong(const GridTask& task, const BeltModel& model, const ControlPoints& points) {
    const double beyond = miss(task, model, points);
    if (std::abs(beyond) > largest_miss)
        return fmt::format("the far plane misses its mid-span by {:.2f} mm, more than {} mm, after {} rounds", beyond,
                           largest_miss, most_rounds);
    return passage_through_rolls(model, points, task.transition.belt.section);
}

GridSolution without_trough(const GridTask& task, const TroughBay& bay) {
    return {belt_model(task.transition, task.state, task.sets, scaled(task.patch_in_space, task.scale), task.scale,
                       task.gauss_points),
            {},
            {task.phase, static_cast<int>(bay.outcome.q.size()), bay.outcome.iterations, bay.outcome.residual,
             bay.outcome.tolerance},
            false,
            "the running trough: " + (bay.outcome.converged ? "it is not stable" : bay.outcome.sentence)};
}

}  // namespace

double first_scale(const TransitionCase& transition, const TensionState& state) {
    if (transition.layout.trough.support == Support::held) return 1;
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);  // free to shrink across
    return 1 / (1 + state.total.value_or(0) / (transition.belt.width * modulus));
}

GridSolution solve_grid(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times) {
    std::shared_ptr<const EndlessTrough> beyond;
    if (task.endless) {
        TroughBay bay = bay_of(task, times);
        std::optional<JointStiffness> joint;
        if (bay.outcome.converged) joint = joint_stiffness(task.transition, bay, Parity::symmetric);
        if (!joint) return without_trough(task, bay);
        beyond = std::make_shared<const EndlessTrough>(EndlessTrough{std::move(bay), std::move(*joint)});
    }
    double scale = task.scale;
    ControlPoints points;
    int iterations = 0;
    for (int round = 1;; ++round) {
        BeltModel model =
            belt_model(task.transition, task.state, task.sets, scaled(task.patch_in_space, scale), scale, task.gauss_points, beyond);
        const NewtonOutcome outcome = run(model, round == 1 ? start(model.patch) : points, task, watcher, times);
        points = model.system.supports().expand(outcome.q);
        iterations += outcome.iterations;
        if (outcome.converged && std::abs(miss(task, model, points)) > largest_miss && round < most_rounds) {
            scale *= 1 - miss(task, model, points) / model.far_end(points);
            continue;
        }
        const int unknowns = model.system.unknowns();
        const std::string wrong = outcome.converged ? why_wrong(task, model, points) : outcome.sentence;
        return {std::move(model),
                points,
                {task.phase, unknowns, iterations, outcome.residual, outcome.tolerance},
                outcome.converged && wrong.empty(),
                wrong.empty() ? outcome.sentence : wrong};
    }
}

}  // namespace swale
