#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"
#include "solver/transition/belt_model.h"
#include "solver/transition/state_notes.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

// Whole transitions on sets other than three equal rolls in a plane.

using namespace swale;

namespace {

constexpr double degree = std::numbers::pi / 180;

TransitionCase three_rolls() {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 2);
    transition.layout.trough.sets = 2;
    return transition;
}

TransitionCase two_rolls() {
    TransitionCase transition = three_rolls();
    Trough& trough = transition.layout.trough;
    trough.rolls = 2;
    trough.angle = 20 * degree;
    trough.wing_roll = 700;
    return transition;
}

TransitionCase five_rolls(double inner_angle = 25 * degree, double angle = 50 * degree) {
    TransitionCase transition = three_rolls();
    Trough& trough = transition.layout.trough;
    trough.rolls = 5;
    trough.inner_angle = inner_angle;
    trough.angle = angle;
    trough.centre_roll = trough.inner_roll = trough.wing_roll = 250;
    return transition;
}

/// Wings ahead by 3 deg, the centre roll ahead by more than a roll.
TransitionCase out_of_plane() {
    TransitionCase transition = three_rolls();
    transition.layout.trough.wing_tilt = 3 * degree;
    transition.layout.trough.centre_offset = 160;
    transition.layout.stations = {{1000, 0.3, {}, Support::rolls}};
    return transition;
}

StateResult solve(const TransitionCase& transition) {
    StateResult state = solve_transition(transition).states.at(0);
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    return state;
}

double weight_of(const TransitionCase& transition, const StateResult& state) {
    return transition.belt.section.mass * gravity * transition.belt.width *
           (state.shape.knots_along.back() - state.shape.knots_along.front());
}

Eigen::Vector3d sum_of_forces(const StateResult& state) {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (const SupportForce& support : state.supports) sum += support.force;
    return sum;
}

double force_of(const StateResult& state, const std::string& name) {
    const auto found = std::ranges::find(state.supports, name, &SupportForce::name);
    REQUIRE_MESSAGE(found != state.supports.end(), name);
    return found->force.norm();
}

/// The supports take up weight and pull, and no roll pushes along its own axis. Gives the rolls that carry.
int check_balance(const TransitionCase& transition) {
    const StateResult state = solve(transition);
    const Eigen::Vector3d sum = sum_of_forces(state);
    CHECK(sum.z() == doctest::Approx(weight_of(transition, state)).epsilon(1e-5));
    CHECK(sum.x() == doctest::Approx(-state.tension).epsilon(1e-6));
    int carrying = 0;
    for (const NamedRoll& roll : all_rolls(transition.layout, 2, transition.belt.section.underside)) {
        const auto support = std::ranges::find(state.supports, roll.name, &SupportForce::name);
        REQUIRE_MESSAGE(support != state.supports.end(), roll.name);
        if (roll.name == "pulley" || support->force.norm() < 1) continue;
        CAPTURE(roll.name);
        // Frictionless: perpendicular to the axis, as far as the belt is clear of the roll's rounded ends.
        CHECK(std::abs(support->force.dot(roll.roll.axis)) < 1e-8 * support->force.norm());
        ++carrying;
    }
    return carrying;
}

}  // namespace

TEST_CASE("two rolls: the supports carry weight and pull and no roll pushes along its axis") {
    CHECK(check_balance(two_rolls()) == 4);
}

TEST_CASE("five rolls: the supports carry weight and pull and no roll pushes along its axis") {
    CHECK(check_balance(five_rolls()) >= 6);  // a stiff belt leaves the centre rolls
}

TEST_CASE("tilted wings and offset centre rolls: the supports carry weight and pull and no roll pushes along its axis") {
    CHECK(check_balance(out_of_plane()) >= 8);
}

TEST_CASE("five rolls with both wings at one angle and no gap between them are three rolls with one long wing") {
    TransitionCase three = three_rolls();
    three.layout.trough.roll_gap = 0;
    three.layout.trough.roll_end_radius = 0;  // nothing between inner and outer wing that a belt could feel
    TransitionCase five = three;
    Trough& trough = five.layout.trough;
    trough.rolls = 5;
    trough.inner_angle = trough.angle;
    trough.inner_roll = 200;
    trough.wing_roll = 265;
    const StateResult one = solve(three), both = solve(five);
    CHECK(force_of(both, "set 1 inner wing +y") > 10);
    // The grid across has a junction more to be fine at.
    CHECK(both.edge_strain_max.value == doctest::Approx(one.edge_strain_max.value).epsilon(2e-3));
    CHECK(both.centre_strain_min.value == doctest::Approx(one.centre_strain_min.value).epsilon(2e-3));
    CHECK(force_of(both, "set 1 inner wing +y") + force_of(both, "set 1 wing +y") ==
          doctest::Approx(force_of(one, "set 1 wing +y")).epsilon(5e-3));
    CHECK(force_of(both, "set 1 centre") == doctest::Approx(force_of(one, "set 1 centre")).epsilon(5e-3));
}

TEST_CASE("five rolls with level inner wings are three rolls with one long centre roll") {
    TransitionCase three = three_rolls();
    three.layout.trough.roll_gap = 0;
    three.layout.trough.roll_end_radius = 0;
    TransitionCase five = three;
    Trough& trough = five.layout.trough;
    trough.rolls = 5;
    trough.inner_angle = 0;
    trough.centre_roll = 265;
    trough.inner_roll = 100;
    const StateResult one = solve(three), both = solve(five);
    CHECK(both.edge_strain_max.value == doctest::Approx(one.edge_strain_max.value).epsilon(2e-3));
    CHECK(force_of(both, "set 1 centre") + 2 * force_of(both, "set 1 inner wing +y") ==
          doctest::Approx(force_of(one, "set 1 centre")).epsilon(5e-3));
}

TEST_CASE("two rolls are three whose centre roll is next to nothing") {
    TransitionCase three = two_rolls();
    three.layout.trough.rolls = 3;
    three.layout.trough.centre_roll = 2;
    three.layout.trough.roll_gap = 0;
    three.layout.trough.roll_end_radius = 0;
    TransitionCase two = three;
    two.layout.trough.rolls = 2;
    const StateResult narrow = solve(three), none = solve(two);
    CHECK(none.edge_strain_max.value == doctest::Approx(narrow.edge_strain_max.value).epsilon(5e-3));
    CHECK(force_of(none, "set 1 wing +y") == doctest::Approx(force_of(narrow, "set 1 wing +y")).epsilon(1e-2));
}

TEST_CASE("a right wing of the left one's length changes nothing") {
    TransitionCase same = three_rolls();
    same.layout.trough.wing_roll_right = same.layout.trough.wing_roll;
    const StateResult once = solve(three_rolls()), again = solve(same);
    CHECK(once.shape.control_points == again.shape.control_points);
}

#ifdef SWALE_LONG_TESTS
namespace {

TransitionCase unequal(double left, double right) {
    TransitionCase transition = three_rolls();
    transition.layout.trough.wing_roll = left;
    transition.layout.trough.wing_roll_right = right;
    transition.settings.model = Symmetry::full;
    return transition;
}

}  // namespace

TEST_CASE("unequal wings seen in the mirror give the mirrored belt") {
    const StateResult left = solve(unequal(465, 300)), right = solve(unequal(300, 465));
    CHECK(left.edge_strain_max.value == doctest::Approx(right.edge_strain_max.value).epsilon(1e-6));
    CHECK(left.edge_strain_max.y == -right.edge_strain_max.y);
    CHECK(left.wing_line_force_max.y < 0);  // on the end of the short roll
    CHECK(right.wing_line_force_max.y > 0);
    CHECK(force_of(left, "set 1 wing +y") == doctest::Approx(force_of(right, "set 1 wing -y")).epsilon(1e-5));
    CHECK(force_of(left, "set 1 wing -y") == doctest::Approx(force_of(right, "set 1 wing +y")).epsilon(1e-5));
    CHECK(sum_of_forces(left).z() == doctest::Approx(weight_of(unequal(465, 300), left)).epsilon(1e-5));
}
#endif

TEST_CASE("an endless trough behind tilted and offset sets is that of square ones and is not read") {
    TransitionCase transition = out_of_plane();
    transition.layout.stations.clear();
    transition.layout.trough.sets.reset();
    const StateResult state = solve(transition);
    CHECK_FALSE(state.running_trough);
    REQUIRE(state.edge_strain_max.far_end_error);
    CHECK(*state.edge_strain_max.far_end_error < 0.005 * state.edge_strain_max.value);
    // Eight tilted and offset sets with a plane behind them know nothing of square ones.
    transition.layout.trough.sets = 8;
    CHECK(state.edge_strain_max.value == doctest::Approx(solve(transition).edge_strain_max.value).epsilon(5e-3));
    CHECK(
        std::ranges::any_of(state.notes, [](const std::string& note) { return note.starts_with("behind the last modelled"); }));
    CHECK(std::ranges::none_of(state.notes, [](const std::string& note) { return note.starts_with("warning: wing rolls"); }));
}

TEST_CASE("a forward tilt beyond practice is noted and beyond all practice a warning") {
    const auto note = [](double degrees) {
        TransitionLayout layout = three_rolls().layout;
        layout.trough.wing_tilt = degrees * degree;
        StateResult result;
        note_sets(layout, false, result);
        return result.notes.empty() ? std::string() : result.notes.front();
    };
    CHECK(note(2).empty());
    CHECK(note(2.5).starts_with("wing rolls tilted forward by 2.5 deg"));
    CHECK(note(3).starts_with("wing rolls"));
    CHECK(note(3.5).starts_with("warning: wing rolls tilted forward by 3.5 deg"));
}
