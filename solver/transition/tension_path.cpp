#include "solver/transition/tension_path.h"

#include "solver/transition/cold_start.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/stability_of_belt.h"

#include <algorithm>
#include <optional>

namespace swale {

namespace {

constexpr double tolerance = 1e-6;  // as of every coarse grid

// From the highest to the lowest [N].
std::vector<double> path_tensions(const TransitionCase& transition, int rows) {
    std::vector<double> totals, path;
    for (const TensionState& state : transition.states)
        if (state.total) totals.push_back(*state.total);
    if (totals.empty() || rows < 2) return totals.empty() || rows < 1 ? path : std::vector{std::ranges::max(totals)};
    const auto [lowest, highest] = std::ranges::minmax(totals);
    const double last = lowest < highest ? lowest : highest / 4;
    for (int k = 0; k < rows; ++k) path.push_back(highest + (last - highest) * k / (rows - 1));
    return path;
}

TensionPathRow row_of(const TransitionCase& transition, const TensionState& state, const GridSolution& solution) {
    TensionPathRow row;
    row.tension = *state.total;
    row.reason = solution.sentence;
    if (!solution.converged) return row;
    static_cast<Readings&>(row) = readings_of(transition, solution);
    row.converged = true;
    const BeltStability lowest = stability_of_belt(transition, state, solution.model, solution.points);
    row.eigenvalue_symmetric = lowest.symmetric;
    row.eigenvalue_antisymmetric = lowest.antisymmetric;
    return row;
}

}  // namespace

TensionPath tension_path(const TransitionCase& transition, int sets, const Patch& patch_in_space, bool endless, int rows,
                         const NewtonWatcher& watcher, NewtonTimes& times) {
    TensionPath path;
    std::optional<GridSolution> above;  // the last that converged
    double strip_above = 1;
    const bool all_loaded = std::ranges::all_of(transition.states, &TensionState::loaded);
    for (const double tension : path_tensions(transition, rows)) {
        const TensionState state{"tension path", tension, {}, all_loaded};
        const double strip = first_scale(transition, state);
        GridTask task{transition, state, sets, patch_in_space, strip, "tension path", tolerance, points_per_span, endless};
        std::optional<GridSolution> solution;
        if (above) {
            task.scale = above->model.scale * strip / strip_above;
            solution = solve_grid(
                task, [&](const Patch&) { return above->points; }, watcher, times);
            task.scale = strip;
        }
        if (!solution || !solution->converged) solution = solve_cold(task, watcher, times);
        path.rows.push_back(row_of(transition, state, *solution));
        if (!solution->converged) continue;
        above = std::move(solution);
        strip_above = strip;
    }
    path.symmetric_zero = zero_crossing(path.rows, &TensionPathRow::eigenvalue_symmetric);
    path.antisymmetric_zero = zero_crossing(path.rows, &TensionPathRow::eigenvalue_antisymmetric);
    return path;
}

std::optional<double> zero_crossing(const std::vector<TensionPathRow>& rows, std::optional<double> TensionPathRow::*of) {
    const TensionPathRow* above = nullptr;
    for (const TensionPathRow& row : rows) {
        if (!(row.*of)) continue;
        const double here = *(row.*of);
        if (above) {
            const double there = *(above->*of);
            if ((here < 0) != (there < 0)) return above->tension + (row.tension - above->tension) * there / (there - here);
        }
        above = &row;
    }
    return {};
}

}  // namespace swale
