#include "solver/transition/grid_solution.h"

#include "mesh/belt_grid.h"
#include "solver/transition/passage.h"

#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr double largest_miss = 0.2;  // of the far plane from its mid-span [mm]; spacings are above 500 mm

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

}  // namespace

double first_scale(const TransitionCase& transition, const TensionState& state) {
    if (transition.layout.trough.support == Support::held) return 1;
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);  // free to shrink across
    return 1 / (1 + state.total.value_or(0) / (transition.belt.width * modulus));
}

GridSolution solve_grid(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times) {
    const bool on_rolls = task.transition.layout.trough.support == Support::rolls;
    const double target = model_length(task.transition.layout, task.sets);
    double scale = task.scale;
    ControlPoints points;
    int iterations = 0;
    for (int round = 0;; ++round) {
        BeltModel model =
            belt_model(task.transition, task.state, task.sets, scaled(task.patch_in_space, scale), scale, task.gauss_points);
        const NewtonOutcome outcome = run(model, round == 0 ? start(model.patch) : points, task, watcher, times);
        points = model.system.supports().expand(outcome.q);
        iterations += outcome.iterations;
        const double place = model.far_end(points);
        const bool placed = !on_rolls || std::abs(place - target) < largest_miss || round == 4;
        if (outcome.converged && !placed) {
            scale *= target / place;
            continue;
        }
        const int unknowns = model.system.unknowns();
        GridSolution solution{std::move(model),
                              points,
                              {task.phase, unknowns, iterations, outcome.residual, outcome.tolerance},
                              outcome.converged,
                              outcome.sentence};
        if (!solution.converged) return solution;
        const std::string passage = passage_through_rolls(solution.model, solution.points, task.transition.belt.section);
        if (passage.empty()) return solution;
        solution.converged = false;
        solution.sentence = passage;
        return solution;
    }
}

}  // namespace swale
