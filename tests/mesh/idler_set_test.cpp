#include "mesh/idler_set.h"

#include <doctest/doctest.h>
#include <Eigen/Geometry>

#include <cmath>
#include <numbers>

using namespace swale;

namespace {

constexpr double underside = 6;

TransitionLayout layout_with_station() {
    TransitionLayout layout;
    layout.belt_width = 1200;
    layout.distance = 2400;
    layout.pulley.diameter = 630;
    layout.pulley.lift = 80;
    layout.trough.angle = 35 * std::numbers::pi / 180;
    layout.trough.centre_roll = layout.trough.wing_roll = 465;
    layout.trough.roll_gap = 10;
    layout.trough.roll_end_radius = 5;
    layout.trough.roll_diameter = 152.4;
    layout.trough.spacing = 1200;
    layout.stations.push_back({900, 0.3, std::nullopt, Support::rolls});
    return layout;
}

/// Point of a roll's contact line at distance s from its middle.
Eigen::Vector3d on_contact_line(const Roll& roll, double s) {
    return roll.centre + roll.radius * roll.up + s * roll.axis;
}

}  // namespace

TEST_CASE("idler sets: stations come first and full sets follow at their spacing") {
    const auto sets = idler_sets(layout_with_station(), 3);
    REQUIRE(sets.size() == 4);
    CHECK(sets[0].name == "station 1");
    CHECK(sets[0].angle == 0.3);
    CHECK(sets[1].name == "set 1");
    CHECK(sets[1].x == 2400);
    CHECK(sets[3].x == 4800);
    CHECK(sets[3].lift == 0);
}

TEST_CASE("idler sets: a station without a lift stands on the line from pulley to first full set") {
    TransitionLayout layout = layout_with_station();
    CHECK(idler_sets(layout, 1)[0].lift == doctest::Approx(80 * (1 - 900.0 / 2400)));
    layout.stations[0].lift = 12;
    CHECK(idler_sets(layout, 1)[0].lift == 12);
}

TEST_CASE("idler sets: contact lines of centre and wings meet at the junctions on the underside") {
    const TransitionLayout layout = layout_with_station();
    for (const IdlerSet& set : idler_sets(layout, 1)) {
        const SetRolls rolls = rolls_of(layout, set, underside);
        const double produced = layout.trough.wing_roll / 2 + layout.trough.roll_gap / 2;
        const Eigen::Vector3d left(set.x, 237.5, set.lift - underside), right(set.x, -237.5, set.lift - underside);
        CHECK((on_contact_line(rolls.wing_left, -produced) - left).norm() < 1e-10);
        CHECK((on_contact_line(rolls.wing_right, -produced) - right).norm() < 1e-10);
        CHECK((on_contact_line(rolls.centre, 237.5) - left).norm() < 1e-10);
        CHECK(std::abs(on_contact_line(rolls.centre, -100).z() - left.z()) < 1e-10);
    }
}

TEST_CASE("idler sets: each roll ends half a gap before the junction") {
    const TransitionLayout layout = layout_with_station();
    const SetRolls rolls = rolls_of(layout, idler_sets(layout, 1)[1], underside);
    const Eigen::Vector3d junction(2400, 237.5, -underside);
    CHECK((on_contact_line(rolls.centre, rolls.centre.half_length) - junction).norm() == doctest::Approx(5));
    CHECK((on_contact_line(rolls.wing_left, -rolls.wing_left.half_length) - junction).norm() == doctest::Approx(5));
}

TEST_CASE("idler sets: wings rise outwards at the set's angle with their up side square to the axis") {
    const TransitionLayout layout = layout_with_station();
    const SetRolls rolls = rolls_of(layout, idler_sets(layout, 1)[1], underside);
    CHECK(rolls.wing_left.axis.z() / rolls.wing_left.axis.y() == doctest::Approx(std::tan(layout.trough.angle)));
    CHECK(rolls.wing_right.axis.z() / -rolls.wing_right.axis.y() == doctest::Approx(std::tan(layout.trough.angle)));
    for (const Roll& roll : {rolls.centre, rolls.wing_left, rolls.wing_right}) {
        CHECK(roll.axis.norm() == doctest::Approx(1));
        CHECK(std::abs(roll.axis.dot(roll.up)) < 1e-14);
        CHECK(roll.up.z() > 0);
    }
}

TEST_CASE("idler sets: the pulley's top carries the underside of a flat belt and is wider than the belt") {
    const TransitionLayout layout = layout_with_station();
    const Roll pulley = pulley_roll(layout, underside);
    CHECK(pulley.clearance({0, 600, 80}).distance == doctest::Approx(underside));
    CHECK(pulley.half_length > 600);
}

TEST_CASE("idler sets: the path follows the straight lines from the pulley through the sets") {
    TransitionLayout layout;
    layout.distance = 2000;
    layout.pulley.lift = 300;
    layout.trough.spacing = 1200;
    layout.stations = {{800, 0.2, 100, Support::rolls}};
    const std::vector<IdlerSet> sets = idler_sets(layout, 2);
    const double to_station = std::hypot(800, 200), to_first = to_station + std::hypot(1200, 100);
    CHECK(sets[0].path == doctest::Approx(to_station));
    CHECK(sets[1].path == doctest::Approx(to_first));
    CHECK(sets[2].path == doctest::Approx(to_first + 1200));
}

TEST_CASE("idler sets: at the pulley's height the path is x - held troughs have it given") {
    TransitionLayout layout;
    layout.distance = 2000;
    layout.trough.spacing = 1200;
    for (const IdlerSet& set : idler_sets(layout, 3)) CHECK(set.path == set.x);
    layout.pulley.lift = 300;
    layout.trough.support = Support::held;
    for (const IdlerSet& set : idler_sets(layout, 1)) CHECK(set.path == set.x);
}
