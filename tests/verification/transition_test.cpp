#include "solver/transition.h"

#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "mesh/trough_profile.h"
#include "solver/newton/newton.h"
#include "solver/transition/belt_model.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

// Whole transitions on rolls: what must hold whatever the answer is.

using namespace swale;
using benchmark::fabric_transition;

namespace {

// Two sets on coarse grids: every property here is one of the equations, not of the resolution.
TransitionCase small_transition(double distance = 2000, double lift = 0) {
    TransitionCase transition = fabric_transition(distance, lift, 2);
    transition.layout.trough.sets = 2;
    return transition;
}

StateResult solve_one(const TransitionCase& transition) {
    const TransitionResult result = solve_transition(transition);
    REQUIRE_MESSAGE(result.states.front().status == SolveStatus::converged, result.states.front().reason);
    return result.states.front();
}

double weight_of(const TransitionCase& transition, const StateResult& state) {
    return transition.belt.section.mass * gravity * transition.belt.width *
           (state.shape.knots_along.back() - state.shape.knots_along.front());
}

double vertical_sum(const StateResult& state) {
    return std::accumulate(state.supports.begin(), state.supports.end(), 0.0,
                           [](double sum, const SupportForce& support) { return sum + support.force.z(); });
}

}  // namespace

TEST_CASE("the supports carry the weight of the belt") {
    // Roll forces are integrated contact pressures; 0.1 % would do, equilibrium gives far better.
    for (const double lift : {0.0, 100.0}) {
        const TransitionCase transition = small_transition(2000, lift);
        const StateResult state = solve_one(transition);
        CHECK(vertical_sum(state) == doctest::Approx(weight_of(transition, state)).epsilon(1e-5));
    }
}

TEST_CASE("the force of every wing roll is perpendicular to its axis") {
    const TransitionCase transition = small_transition();
    for (const SupportForce& support : solve_one(transition).supports)
        if (support.name.ends_with("wing +y") && support.force.z() > 1)
            CHECK(support.force.y() / support.force.z() ==
                  doctest::Approx(-std::tan(transition.layout.trough.angle)).epsilon(1e-9));
}

TEST_CASE("half and full model agree") {
    TransitionCase transition = small_transition();
    const StateResult half = solve_one(transition);
    transition.settings.model = Symmetry::full;
    const StateResult full = solve_one(transition);
    CHECK(full.edge_strain_max.value == doctest::Approx(half.edge_strain_max.value).epsilon(1e-6));
    CHECK(full.centre_strain_min.value == doctest::Approx(half.centre_strain_min.value).epsilon(1e-6));
    CHECK(full.junction_bending_strain_max.value == doctest::Approx(half.junction_bending_strain_max.value).epsilon(1e-6));
    CHECK(full.pulley_tension == doctest::Approx(half.pulley_tension).epsilon(1e-6));
    REQUIRE((full.eigenvalue_symmetric && half.eigenvalue_symmetric));
    CHECK(*full.eigenvalue_symmetric == doctest::Approx(*half.eigenvalue_symmetric).epsilon(1e-3));
    CHECK(*full.eigenvalue_antisymmetric == doctest::Approx(*half.eigenvalue_antisymmetric).epsilon(1e-3));
}

TEST_CASE("a sliding wrap lets strain leak round the pulley") {
    TransitionCase transition = small_transition(1200);
    const double stuck = solve_one(transition).edge_strain_max.value;
    transition.layout.pulley.grip = Grip::sliding;
    const StateResult sliding = solve_one(transition);
    CHECK(sliding.edge_strain_max.value < stuck);
    CHECK(vertical_sum(sliding) == doctest::Approx(weight_of(transition, sliding)).epsilon(1e-5));
}

TEST_CASE("a held station among rolls holds its profile") {
    TransitionCase transition = small_transition(2400);
    transition.layout.trough.junction_radius = 150;
    transition.layout.stations = {{1200, 0.3, {}, Support::held}};
    const StateResult state = solve_one(transition);
    CHECK(vertical_sum(state) == doctest::Approx(weight_of(transition, state)).epsilon(1e-5));
    // The wing's outer point of a belt laid on the profile, arc length kept: straight beyond the arc.
    const TroughProfile profile = profile_at(transition.layout, transition.belt.section.underside, 0.3, 0);
    REQUIRE(state.across[1].name == "station 1");
    CHECK(state.across[1].points.back().position.z() == doctest::Approx(profile.at(600).y()).epsilon(1e-6));
}

TEST_CASE("a state that does not converge is named with both numbers and the others are delivered") {
    TransitionCase transition = small_transition();
    transition.settings.newton_iterations = 2;  // too few for any start
    const TransitionResult result = solve_transition(transition);
    REQUIRE(result.states.front().status == SolveStatus::not_converged);
    CHECK(result.states.front().reason.find("residual") != std::string::npos);
    CHECK(result.states.front().reason.find("tension 30 kN") != std::string::npos);
    CHECK(result.criteria.empty());
}

TEST_CASE("two runs give the same bits") {
    const TransitionCase transition = small_transition();
    const StateResult once = solve_one(transition), again = solve_one(transition);
    CHECK((once.shape.control_points - again.shape.control_points).cwiseAbs().maxCoeff() == 0);
    CHECK(once.eigenvalue_symmetric == again.eigenvalue_symmetric);
}

TEST_CASE("two and three Gauss points a span agree away from the stuck corner") {
    const TransitionCase transition = small_transition();
    const TensionState& state = transition.states.front();
    const StateResult solved = solve_one(transition);
    const Patch patch{CubicBasis({solved.shape.knots_along.begin() + 3, solved.shape.knots_along.end() - 3}),
                      CubicBasis({solved.shape.knots_across.begin() + 3, solved.shape.knots_across.end() - 3})};
    const double scale = patch.along.end() / path_length(transition.layout, 2);
    const BeltModel more = belt_model(transition, state, 2, patch, scale, 3);
    NewtonSettings settings;
    const NewtonOutcome outcome = minimise(more.system, more.system.supports().project(solved.shape.control_points), settings);
    REQUIRE(outcome.converged);
    const ControlPoints points = more.system.supports().expand(outcome.q);
    for (const double x : {500.0, 1000.0, 1500.0, 1900.0})
        CHECK(patch.jet(points, x, 600).along.norm() - 1 ==
              doctest::Approx(patch.jet(solved.shape.control_points, x, 600).along.norm() - 1).epsilon(2e-4));
}
