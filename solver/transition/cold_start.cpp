#include "solver/transition/cold_start.h"

#include "mesh/idler_set.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/other_equilibria.h"
#include "solver/transition/start_surface.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

namespace swale {

namespace {

// The rough grid gives a start, no result.
constexpr double rough_tolerance = 1e-3;

// From this mean strain on a belt is taut in every case that was met; tensions fall from there by this factor.
constexpr double taut_strain = 4e-3, tension_step = 4;

CubicBasis every_other(const CubicBasis& basis) {
    std::vector<double> breaks;
    for (int k = 0; k < basis.spans(); k += 2) breaks.push_back(basis.breaks()[k]);
    if (basis.spans() % 2 == 1 && breaks.size() > 1) breaks.pop_back();  // no single short span at the end
    breaks.push_back(basis.end());
    return CubicBasis(std::move(breaks));
}

// A whole belt's from the centre line outwards, as half of it has them.
CubicBasis every_other_across(const CubicBasis& basis) {
    if (basis.begin() >= 0) return every_other(basis);
    const std::vector<double>& all = basis.breaks();
    const std::vector<double> outwards = every_other(CubicBasis({all.begin() + basis.spans() / 2, all.end()})).breaks();
    std::vector<double> breaks;
    for (auto y = outwards.rbegin(); y != outwards.rend(); ++y) breaks.push_back(0 - *y);  // no negative zero
    breaks.insert(breaks.end(), outwards.begin() + 1, outwards.end());
    return CubicBasis(std::move(breaks));
}

// A held station must lie on a knot.
bool may_be_rough(const TransitionLayout& layout) {
    return std::none_of(layout.stations.begin(), layout.stations.end(),
                        [](const Station& station) { return station.support == Support::held; });
}

GridSolution solve_rough(const GridTask& task, const NewtonWatcher& watcher, NewtonTimes& times) {
    GridTask rough = task;
    rough.patch_in_space = {every_other(task.patch_in_space.along), every_other_across(task.patch_in_space.across)};
    rough.tolerance = rough_tolerance;
    return solve_grid(rough, ruled_start(rough), watcher, times);
}

// Highest tension first, the task's own last.
std::vector<double> falling_tensions(const TransitionCase& transition, double tension) {
    std::vector<double> tensions{tension};
    const double taut = taut_strain * transition.belt.section.membrane(0, 0) * transition.belt.width;
    while (tensions.back() > 0 && tensions.back() < taut) tensions.push_back(tension_step * tensions.back());
    std::reverse(tensions.begin(), tensions.end());
    return tensions;
}

// Each tension from the one above it, as long as they converge; absent if there is none above.
std::optional<GridSolution> solve_falling(const GridTask& task, const NewtonWatcher& watcher, NewtonTimes& times) {
    const std::vector<double> tensions = falling_tensions(task.transition, task.state.total.value_or(0));
    if (tensions.size() == 1) return {};
    std::optional<GridSolution> solution;
    double strip = 1;
    for (const double tension : tensions) {
        TensionState state = task.state;
        state.total = tension;
        const double before = std::exchange(strip, first_scale(task.transition, state));
        GridTask step{task.transition, state,          task.sets,         task.patch_in_space, strip,
                      task.phase,      task.tolerance, task.gauss_points, task.endless};
        GridStart start = ruled_start(step);
        if (solution) {
            step.scale = solution->model.scale * strip / before;
            start = [points = solution->points](const Patch&) { return points; };
        }
        const int iterations = solution ? solution->record.iterations : 0;
        solution = solve_grid(step, start, watcher, times);
        solution->record.iterations += iterations;
        if (!solution->converged) break;
    }
    return solution;
}

}  // namespace

GridStart ruled_start(const GridTask& task) {
    const auto surface =
        std::make_shared<const StartSurface>(task.transition.layout, task.sets, task.transition.belt.section.underside);
    return [surface, scale = task.scale, elongation = task.state.elongation.value_or(0)](const Patch& patch) {
        const double stretch = 1 + elongation / patch.along.end();
        return patch.follow([&](double x, double y) {
            Eigen::Vector3d position = surface->at(x / scale, y);
            position.x() *= stretch;
            return position;
        });
    };
}

GridSolution solve_cold(const GridTask& task, const NewtonWatcher& watcher, NewtonTimes& times) {
    int before = 0;
    const auto counted = [&](GridSolution solution) {
        solution.record.iterations = before += solution.record.iterations;
        return solution;
    };
    if (may_be_rough(task.transition.layout)) {
        const GridSolution rough = counted(solve_rough(task, watcher, times));
        // A slack belt has several equilibria, and the rough grid tends to those that lie higher.
        if (rough.converged && !slack(readings_of(task.transition, rough))) {
            GridTask finer = task;
            finer.scale = rough.model.scale;
            finer.known_trough = rough.model.beyond;
            const auto refined = [&](const Patch& patch) { return rough.model.patch.refine(rough.points, patch); };
            GridSolution solution = counted(solve_grid(finer, refined, watcher, times));
            if (solution.converged) return solution;
        }
    }
    GridSolution direct = counted(solve_grid(task, ruled_start(task), watcher, times));
    if (direct.converged) return direct;
    std::optional<GridSolution> falling = solve_falling(task, watcher, times);
    return falling && falling->converged ? counted(*std::move(falling)) : direct;
}

}  // namespace swale
