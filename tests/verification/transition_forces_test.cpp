#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"
#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>

// Forces of whole transitions, roll by roll, and the one strain in them that has a closed form.

using namespace swale;
using namespace swale::verification;

namespace {

/// With an intermediate set at an angle of its own, on a coarse pair of grids.
TransitionCase with_station() {
    TransitionCase transition = benchmark::fabric_transition(2400, 0, 2);
    transition.layout.trough.sets = 2;
    transition.layout.stations = {{1200, 0.3, {}, Support::rolls}};
    return transition;
}

StateResult solve(const TransitionCase& transition) {
    StateResult state = solve_transition(transition).states.at(0);
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    return state;
}

/// Force towards the middle over the lift, -tan(angle) on the side of +y. Counts the wings that carry.
int check_wings(const StateResult& state, const std::string& set, double angle) {
    int carrying = 0;
    for (const SupportForce& support : state.supports) {
        const double side = support.name == set + " wing +y" ? 1 : support.name == set + " wing -y" ? -1 : 0;
        if (side == 0 || support.force.z() == 0) continue;
        CAPTURE(support.name);
        check("across over vertical force of a wing roll",
              {-side * std::tan(angle), "-", "frictionless roll", Kind::closed_form, "belt clear of the roll's rounded ends",
               1e-9, "rounding"},
              support.force.y() / support.force.z());
        ++carrying;
    }
    return carrying;
}

}  // namespace

TEST_CASE("wings of an intermediate set push at its own angle and those of full sets at the trough's") {
    const TransitionCase transition = with_station();
    const StateResult state = solve(transition);
    CHECK(check_wings(state, "station 1", 0.3) == 2);
    CHECK(check_wings(state, "set 1", transition.layout.trough.angle) == 2);
    CHECK(check_wings(state, "set 2", transition.layout.trough.angle) == 2);
}

TEST_CASE("along the belt the supports take up what its far end pulls") {
    const StateResult state = solve(with_station());
    double along = 0;
    for (const SupportForce& support : state.supports) along += support.force.x();
    check("force along",
          {-state.tension, "N", "equilibrium", Kind::closed_form, "total tension given", 1e-6,
           "Newton stops at 1e-8 of the tension"},
          along);
    // The pulley's body beyond x = 0 bears a trifle along x, which the resultant at x = 0 leaves out.
    CHECK(state.pulley_tension == doctest::Approx(-state.supports[0].force.x()).epsilon(1e-4));
}

TEST_CASE("a flat weightless belt is stretched by its tension alone") {
    TransitionCase transition = with_station();
    transition.layout.stations.clear();
    transition.layout.trough.angle = 0;
    transition.belt.section.mass = 0;
    const StateResult state = solve(transition);
    // Stretch s under T/W = s N11, N11 = (A11 - A12^2/A22) (s^2 - 1)/2, free to shrink across.
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);
    double stretch = 1;
    for (int k = 0; k < 30; ++k) stretch = std::sqrt(1 + 2 * 25 / (modulus * stretch));
    check("strain far from the pulley",
          {stretch - 1, "-", "uniform strip with the shell's own law", Kind::closed_form, "3 W behind the stuck line", 1e-4,
           "what that line's hold across leaves there"},
          state.far_strain);
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("each support has the same force in the half and the full model") {
    TransitionCase transition = with_station();
    const StateResult half = solve(transition);
    transition.settings.model = Symmetry::full;
    const StateResult whole = solve(transition);
    REQUIRE(half.supports.size() == whole.supports.size());
    for (std::size_t k = 0; k < half.supports.size(); ++k) {
        CHECK(half.supports[k].name == whole.supports[k].name);
        CHECK((half.supports[k].force - whole.supports[k].force).norm() < 1e-8 * half.tension);
    }
    CHECK(half.roll_force_max.value == doctest::Approx(whole.roll_force_max.value).epsilon(1e-6));
    for (const auto mode : {&StateResult::mode_symmetric, &StateResult::mode_antisymmetric}) {
        const BeltMode &of_half = (half.*mode).value(), &of_whole = (whole.*mode).value();
        REQUIRE(of_half.motion.size() == of_whole.motion.size());
        for (std::size_t k = 0; k < of_half.motion.size(); ++k)
            CHECK((of_half.motion[k] - of_whole.motion[k]).norm() < 5e-3);  // Lanczos stops at a residual of 1e-4
        CHECK(of_half.x == doctest::Approx(of_whole.x).epsilon(1e-6));      // as far as the unstretched lengths agree
    }
}

TEST_CASE("several states give the same bits whichever thread comes first") {
    TransitionCase transition = with_station();
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
