#include "solver/transition.h"

#include "mesh/trough_profile.h"
#include "tests/verification/fabric_belt.h"
#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>

// Whole transitions: what must hold for the forces of any of them, whatever the belt does. How a belt is strained in one has no
// closed form, but for a flat one.

using namespace swale;
using namespace swale::verification;

namespace {

StateResult solve(const TransitionCase& transition) {
    StateResult state = solve_transition(transition).states.at(0);
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    return state;
}

Reference balance(double value, const char* conditions) {
    return {value,
            "N",
            "equilibrium",
            Kind::closed_form,
            conditions,
            1e-5,
            "Newton stops at 1e-8 of the tension, which is forty times the weight"};
}

/// The supports carry the belt, and nothing pulls it along but its two ends.
void check_balance(const TransitionCase& transition, const StateResult& state) {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (const SupportForce& support : state.supports) sum += support.force;
    check(balance(weight_of(transition, state.shape), "weight of the unstretched belt"), sum.z());
    check(balance(-state.tension, "tension at the far end"), sum.x());
    CHECK(std::abs(sum.y()) < 1e-6 * state.tension);
}

/// A wing's share of the force towards the middle, Fy/Fz = -tan(angle) on the side of +y. Counts the wings that carry.
int check_wings(const StateResult& state, const std::string& set, double angle) {
    int carrying = 0;
    for (const SupportForce& support : state.supports) {
        const double side = support.name == set + " wing +y" ? 1 : support.name == set + " wing -y" ? -1 : 0;
        if (side == 0 || support.force.z() == 0) continue;
        CAPTURE(support.name);
        check({-side * std::tan(angle), "-", "frictionless roll", Kind::closed_form, "belt clear of the roll's rounded ends",
               1e-9, "rounding"},
              support.force.y() / support.force.z());
        ++carrying;
    }
    return carrying;
}

}  // namespace

TEST_CASE("transition: contact pressure and the ends carry the weight of the belt") {
    for (const double lift : {0.0, 104.0}) {
        CAPTURE(lift);
        TransitionCase transition = fabric_transition();
        transition.layout.pulley.lift = lift;
        const StateResult state = solve(transition);
        check_balance(transition, state);
        // The pulley's body beyond x = 0 bears a trifle along x, which the resultant at x = 0 leaves out.
        CHECK(state.pulley_tension == doctest::Approx(-state.supports[0].force.x()).epsilon(1e-4));
    }
}

TEST_CASE("transition: the force of each wing roll is square to its axis") {
    TransitionCase transition = fabric_transition();
    transition.layout.stations = {{1200, 0.3, {}, Support::rolls}};
    const StateResult state = solve(transition);
    check_balance(transition, state);
    CHECK(check_wings(state, "station 1", 0.3) == 2);
    CHECK(check_wings(state, "set 1", transition.layout.trough.angle) == 2);
    CHECK(check_wings(state, "set 2", transition.layout.trough.angle) == 2);
}

TEST_CASE("transition: a flat belt is stretched by its tension alone") {
    TransitionCase transition = fabric_transition();
    transition.layout.trough.angle = 0;
    transition.belt.section.mass = 0;
    const StateResult state = solve(transition);
    // Stretch s under T/W = s N11, N11 = (A11 - A12^2/A22) (s^2 - 1)/2, free to shrink across.
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);
    double stretch = 1;
    for (int k = 0; k < 30; ++k) stretch = std::sqrt(1 + 2 * 25 / (modulus * stretch));
    check({stretch - 1, "-", "uniform strip with the shell's own law", Kind::closed_form, "3 W from the stuck line", 1e-4,
           "what the stuck line's hold across leaves there"},
          state.far_strain);
}

TEST_CASE("transition: a state that does not converge says so with grid and tension and both numbers") {
    TransitionCase transition = fabric_transition();
    transition.settings.newton_iterations = 1;
    const StateResult state = solve_transition(transition).states.at(0);
    CHECK(state.status == SolveStatus::not_converged);
    CHECK(state.reason.starts_with("coarse grid, tension 30 kN: residual "));
    CHECK(state.reason.find(" > 1.0e-06 after 1 iterations") != std::string::npos);
}

#ifdef SWALE_LONG_TESTS  // together with sanitizers they take a minute
TEST_CASE("transition: a belt on a sliding pulley finds its balance") {
    TransitionCase transition = fabric_transition();
    transition.layout.pulley.grip = Grip::sliding;
    check_balance(transition, solve(transition));
}

TEST_CASE("transition: a held station between pulley and rolls keeps its section and bears what it must") {
    TransitionCase transition = fabric_transition();
    transition.layout.stations = {{1200, 0.3, 20, Support::held}};
    const StateResult state = solve(transition);
    check_balance(transition, state);
    const TroughProfile profile = profile_at(transition.layout, transition.belt.section.underside, 0.3, 20);
    REQUIRE(state.across.at(1).name == "station 1");
    for (const SurfacePoint& point : state.across[1].points)
        CHECK((point.position.tail<2>() - profile.at(point.y)).norm() < 0.2);  // spline against arc, 6 mm spans
}

TEST_CASE("transition: half the model gives the whole") {
    TransitionCase transition = fabric_transition();
    const StateResult half = solve(transition);
    transition.settings.model = Symmetry::full;
    const StateResult whole = solve(transition);
    CHECK(half.edge_strain_max.value == doctest::Approx(whole.edge_strain_max.value).epsilon(1e-8));
    CHECK(half.tension_min.value == doctest::Approx(whole.tension_min.value).epsilon(1e-8));
    CHECK(half.junction_bending_strain_max.value == doctest::Approx(whole.junction_bending_strain_max.value).epsilon(1e-8));
    CHECK(*half.eigenvalue_symmetric == doctest::Approx(*whole.eigenvalue_symmetric).epsilon(1e-5));
    CHECK(*half.eigenvalue_antisymmetric == doctest::Approx(*whole.eigenvalue_antisymmetric).epsilon(1e-5));
    REQUIRE(half.supports.size() == whole.supports.size());
    for (std::size_t k = 0; k < half.supports.size(); ++k) {
        CHECK(half.supports[k].name == whole.supports[k].name);
        CHECK((half.supports[k].force - whole.supports[k].force).norm() < 1e-8 * half.tension);
    }
}

TEST_CASE("transition: two runs give the same bits whichever thread comes first") {
    TransitionCase transition = fabric_transition();
    for (const double share : {1.4, 0.4}) transition.states.push_back({"another", share * 30e3, {}});
    const TransitionResult first = solve_transition(transition), second = solve_transition(transition);
    for (std::size_t k = 0; k < first.states.size(); ++k) {
        const StateResult &one = first.states[k], &other = second.states[k];
        REQUIRE_MESSAGE(one.status == SolveStatus::converged, one.reason);
        CHECK(one.shape.control_points == other.shape.control_points);
        CHECK(one.edge_strain_max.far_end_error == other.edge_strain_max.far_end_error);
        CHECK(one.eigenvalue_symmetric == other.eigenvalue_symmetric);
    }
}
#endif
