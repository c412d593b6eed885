#include "solver/transition/other_equilibria.h"

#include "solver/strain/readings.h"
#include "tests/verification/slack_belt.h"

#include <doctest/doctest.h>

#include <cmath>

// A slack, thin belt has more than one equilibrium.

using namespace swale;

namespace {

constexpr int all_starts = 100;

struct Answer {
    explicit Answer(TransitionCase asked, int starts) : transition(std::move(asked)) {
        REQUIRE_MESSAGE(known.converged, known.sentence);
        others = other_equilibria(task, known, starts, {}, times);
    }
    Readings readings() const { return take_readings(transition, known.model, known.points); }

    TransitionCase transition;
    GridTask task = coarse_task(transition);
    NewtonTimes times;
    GridSolution known = solve_cold(task, {}, times);
    std::vector<OtherSolution> others;
};

double potential(const BeltModel& model, const ControlPoints& points) {
    return model.multiplicity() * model.system.energy(model.system.supports().project(points));
}

}  // namespace

TEST_CASE("a slack thin belt has at least three equilibria and each is a minimum of its own") {
    const Answer answer(thin_transition(1000), all_starts);
    CHECK(slack(answer.readings()));
    REQUIRE(answer.others.size() >= 2);
    for (std::size_t k = 0; k < answer.others.size(); ++k) {
        const OtherSolution& other = answer.others[k];
        CAPTURE(other.start);
        CHECK(other.solution.converged);
        CHECK(other.apart.distance > 0.5);
        for (std::size_t l = 0; l < k; ++l) CHECK(separation(answer.others[l].solution, other.solution).distance > 0.5);
        // Newton from a small push falls back into the same shape: none is a saddle or a stop on the way to another.
        ControlPoints pushed = other.solution.points;
        pushed.row(2).array() += 0.1;
        const GridTask& task = answer.task;
        const GridTask again{task.transition, task.state,     task.sets,        task.patch_in_space, other.solution.model.scale,
                             task.phase,      task.tolerance, task.gauss_points};
        NewtonTimes times;
        const GridSolution back = solve_grid(
            again, [&](const Patch&) { return pushed; }, {}, times);
        CHECK(separation(other.solution, back).distance < 0.1);
    }
}

TEST_CASE("the first other start finds the bulge on the other side") {
    const Answer answer(thin_transition(1000), 1);
    REQUIRE(answer.others.size() == 1);
    const OtherSolution& other = answer.others.front();
    const double x = 500 * answer.known.model.scale;
    const double here = answer.known.model.patch.jet(answer.known.points, x, 0).position.z();
    const double there = other.solution.model.patch.jet(other.solution.points, x, 0).position.z();
    CHECK(std::abs(there - here) > 10);
    // It costs other edge strain: the verdict is not that of one shape.
    CHECK(std::abs(other.readings.edge_strain_max.value / answer.readings().edge_strain_max.value - 1) > 0.01);
}

TEST_CASE("an energy difference is that of both shapes at the same unstretched length") {
    const Answer answer(thin_transition(1000), 2);
    const GridTask& task = answer.task;
    const BeltModel& known = answer.known.model;
    REQUIRE(!answer.others.empty());
    for (const OtherSolution& other : answer.others) {
        // The other shape on the belt of the known one; its far plane goes where the pull takes it.
        const BeltModel model = belt_model(task.transition, task.state, task.sets, known.patch, known.scale, task.gauss_points);
        NewtonSettings settings;
        settings.tolerance = 1e-7;
        const NewtonOutcome outcome = minimise(model.system, model.system.supports().project(other.solution.points), settings);
        REQUIRE(outcome.converged);
        const double bare = potential(model, model.system.supports().expand(outcome.q)) - potential(known, answer.known.points);
        // What is left is of second order in a length of some tenths of a mm, and the contact points that moved with the grid.
        CHECK(other.energy_difference == doctest::Approx(bare).epsilon(2e-3));
    }
}

TEST_CASE("a taut belt comes to the same shape from every start") {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 2);
    transition.layout.trough.sets = 2;
    const Answer answer(transition, all_starts);
    CHECK(!slack(answer.readings()));
    CHECK(answer.others.empty());
}

TEST_CASE("a search for other equilibria gives the same bits twice") {
    const Answer once(thin_transition(1000), 1), again(thin_transition(1000), 1);
    REQUIRE(once.others.size() == again.others.size());
    CHECK(once.others.front().energy_difference == again.others.front().energy_difference);
}
