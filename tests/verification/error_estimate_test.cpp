#include "solver/transition/error_estimate.h"
#include "materials/catalogue.h"
#include "mesh/idler_series.h"
#include "solver/transition/cold_start.h"
#include "solver/transition/grid_difference.h"
#include "solver/transition/grid_ladder.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

// Estimated errors of the grid against solutions on finer ones.

using namespace swale;

namespace {

TransitionCase flush_transition() {
    TransitionCase transition;
    transition.belt = belt_from_designation("EP 800/4 6+3", 1200);
    TransitionLayout& layout = transition.layout;
    layout.belt_width = 1200;
    layout.distance = 2400;
    layout.pulley.diameter = 630;
    const double roll = standard_roll_length(1200).value();
    layout.trough = {35 * std::numbers::pi / 180, roll, roll, 10, 5, 133, 1200, 3, Support::rolls, {}, 0};
    transition.states = {{"starting", 62e3, {}}};
    return transition;
}

/// The usual coarse grid and each with spans half as long as the one before.
struct Grids {
    Grids(const TransitionCase& transition, int count) {
        NewtonTimes times;
        GridTask task{transition,
                      transition.states[0],
                      3,
                      coarse_grid(transition, 3),
                      first_scale(transition, transition.states[0]),
                      "grid",
                      1e-8};
        solutions.push_back(solve_cold(task, {}, times));
        for (int k = 1; k < count; ++k) {
            task.patch_in_space = halved(task.patch_in_space);
            task.scale = solutions.back().model.scale;
            solutions.push_back(solve_finer(task, solutions.back(), {}, times));
        }
        for (const GridSolution& solution : solutions) {
            REQUIRE_MESSAGE(solution.converged, solution.sentence);
            readings.push_back(readings_of(transition, solution));
        }
    }

    std::vector<GridSolution> solutions;
    std::vector<Readings> readings;
};

}  // namespace

TEST_CASE("where two grids' peaks agree by chance the difference of their fields tells that they are not exact") {
    const TransitionCase transition = flush_transition();
    const Grids grids(transition, 3);
    const auto strain = [&](int grid) { return grids.readings[grid].surface_strain_max.value; };
    const Readings difference =
        grid_difference(transition, grids.solutions[1], grids.readings[1], grids.solutions[0], grids.readings[0]);
    const double true_error = std::abs(strain(1) - strain(2));
    REQUIRE(std::abs(strain(1) - strain(0)) < 0.2 * true_error);
    CHECK(difference.surface_strain_max.value > 0.5 * true_error);
    Readings estimated = grids.readings[1];
    estimate_discretisation(estimated, difference, 1);
    CHECK(*estimated.surface_strain_max.error > true_error);
}

TEST_CASE("the difference of two grids is at least that of their peaks and none of a grid with itself") {
    const TransitionCase transition = flush_transition();
    Grids grids(transition, 2);
    Readings difference =
        grid_difference(transition, grids.solutions[1], grids.readings[1], grids.solutions[0], grids.readings[0]);
    Readings none = grid_difference(transition, grids.solutions[1], grids.readings[1], grids.solutions[1], grids.readings[1]);
    for (std::size_t k = 0; k < difference.all().size(); ++k) {
        const double apart = std::abs(grids.readings[1].all()[k]->value - grids.readings[0].all()[k]->value);
        CHECK(difference.all()[k]->value >= apart);
        CHECK(none.all()[k]->value == 0);
    }
}
