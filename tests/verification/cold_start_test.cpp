#include "solver/transition/cold_start.h"

#include "solver/transition/shape_energy.h"
#include "tests/verification/slack_belt.h"

#include <doctest/doctest.h>

using namespace swale;

TEST_CASE("a taut belt solved by way of every other knot is the one solved at once") {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 1);
    transition.layout.trough.sets = 2;
    const GridTask task = coarse_task(transition);
    NewtonTimes times;
    int steps = 0;
    const GridSolution cold = solve_cold(
        task, [&](int, double) { ++steps; }, times);
    const GridSolution direct = solve_grid(task, ruled_start(task), {}, times);
    REQUIRE(cold.converged);
    REQUIRE(direct.converged);
    CHECK(cold.points.cols() == direct.points.cols());
    CHECK(separation(direct, cold).distance < 0.05);  // the far plane may miss by 0.2 mm in either
    CHECK(steps >= cold.record.iterations);
}

TEST_CASE("a slack thin belt on less than half its width that Newton does not reach at once comes down from higher tensions") {
    TransitionCase transition = thin_transition(400, 300);
    transition.settings.newton_iterations = 60;
    const GridTask task = coarse_task(transition);
    NewtonTimes times;
    REQUIRE(!solve_grid(task, ruled_start(task), {}, times).converged);
    const GridSolution cold = solve_cold(task, {}, times);
    CHECK_MESSAGE(cold.converged, cold.sentence);
}
