#include "solver/transition/carried_correction.h"

#include <utility>

namespace swale {

GridStart CarriedCorrection::added_to(GridStart start) const {
    return [start = std::move(start), correction = correction_](const Patch& patch) {
        ControlPoints points = start(patch);
        if (points.cols() == correction.cols()) points += correction;
        return points;
    };
}

void CarriedCorrection::learn(const GridStart& start, const GridSolution& solution) {
    if (solution.converged) correction_ = solution.points - start(solution.model.patch);
}

GridSolution solve_carrying(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times,
                            CarriedCorrection* carried) {
    if (!carried) return solve_grid(task, start, watcher, times);
    GridSolution solution = solve_grid(task, carried->added_to(start), watcher, times);
    if (!solution.converged && carried->known()) solution = solve_grid(task, start, watcher, times);
    carried->learn(start, solution);
    return solution;
}

}  // namespace swale
