#include "benchmarks/published/fabric_belt.h"
#include "materials/gravity.h"
#include "solver/transition.h"

#include <doctest/doctest.h>

#include <cmath>

// What stands beside the transition's readings: the same of the endless trough's periodic bay.

using namespace swale;

namespace {

StateResult solved(double distance) {
    TransitionCase transition = benchmark::fabric_transition(distance, 0, 1);
    transition.settings.accuracy = 0.05;
    const TransitionResult result = solve_transition(transition);
    REQUIRE_MESSAGE(result.states.front().status == SolveStatus::converged, result.states.front().reason);
    return result.states.front();
}

}  // namespace

TEST_CASE("the running trough bears less at the junction and on the wing than the first set of a short transition") {
    const StateResult state = solved(1500);
    REQUIRE(state.running_trough);
    CHECK(state.junction_bending_strain_max.value > state.running_trough->junction_bending_strain);
    CHECK(state.wing_line_force_max.value > state.running_trough->wing_line_force);
    CHECK(state.running_trough->wing_line_force > 0);
}

TEST_CASE("the rolls of a bay of the running trough carry the belt's weight of one spacing") {
    const TransitionCase transition = benchmark::fabric_transition(1500, 0, 1);
    const RunningTrough trough = *solved(1500).running_trough;
    const double angle = transition.layout.trough.angle,
                 weight = transition.belt.section.mass * gravity * transition.belt.width * transition.layout.trough.spacing;
    // Frictionless wings push at a right angle to their axes: up by cos(angle). The bay is stretched by half a percent.
    CHECK(trough.roll_forces.at("wing +y") == trough.roll_forces.at("wing -y"));
    CHECK(trough.roll_forces.at("centre") + 2 * std::cos(angle) * trough.roll_forces.at("wing +y") ==
          doctest::Approx(weight).epsilon(0.01));
}

TEST_CASE("the running trough does not depend on the transition before it") {
    const StateResult shorter = solved(1500), longer = solved(3000);
    CHECK(shorter.running_trough->junction_bending_strain ==
          doctest::Approx(longer.running_trough->junction_bending_strain).epsilon(1e-4));
    CHECK(shorter.running_trough->wing_line_force == doctest::Approx(longer.running_trough->wing_line_force).epsilon(0.02));
}
