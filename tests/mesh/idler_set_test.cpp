#include "mesh/idler_set.h"

#include <doctest/doctest.h>
#include <Eigen/Geometry>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

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

/// Of the roll of that name in the first full set.
Roll roll_of(const TransitionLayout& layout, const std::string& name, int set = 0) {
    for (const SetRoll& roll : rolls_of(layout, idler_sets(layout, 1)[layout.stations.size() + set], underside))
        if (roll.name == name) return roll.roll;
    FAIL("no roll ", name);
    return {};
}

std::vector<std::string> names_of(const TransitionLayout& layout) {
    std::vector<std::string> names;
    for (const SetRoll& roll : rolls_of(layout, idler_sets(layout, 1).back(), underside)) names.push_back(roll.name);
    return names;
}

/// 1200 mm on rolls of 250 mm at 25 and 55 deg.
TransitionLayout five_rolls() {
    TransitionLayout layout = layout_with_station();
    layout.trough.rolls = 5;
    layout.trough.centre_roll = layout.trough.inner_roll = layout.trough.wing_roll = 250;
    layout.trough.inner_angle = 25 * std::numbers::pi / 180;
    layout.trough.angle = 55 * std::numbers::pi / 180;
    return layout;
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
        const std::vector<SetRoll> rolls = rolls_of(layout, set, underside);
        const Roll &centre = rolls[0].roll, &wing_left = rolls[1].roll, &wing_right = rolls[2].roll;
        const double produced = layout.trough.wing_roll / 2 + layout.trough.roll_gap / 2;
        const Eigen::Vector3d left(set.x, 237.5, set.lift - underside), right(set.x, -237.5, set.lift - underside);
        CHECK((on_contact_line(wing_left, -produced) - left).norm() < 1e-10);
        CHECK((on_contact_line(wing_right, -produced) - right).norm() < 1e-10);
        CHECK((on_contact_line(centre, 237.5) - left).norm() < 1e-10);
        CHECK(std::abs(on_contact_line(centre, -100).z() - left.z()) < 1e-10);
    }
}

TEST_CASE("idler sets: each roll ends half a gap before the junction") {
    const TransitionLayout layout = layout_with_station();
    const Roll centre = roll_of(layout, "centre"), wing_left = roll_of(layout, "wing +y");
    const Eigen::Vector3d junction(2400, 237.5, -underside);
    CHECK((on_contact_line(centre, centre.half_length) - junction).norm() == doctest::Approx(5));
    CHECK((on_contact_line(wing_left, -wing_left.half_length) - junction).norm() == doctest::Approx(5));
}

TEST_CASE("idler sets: wings rise outwards at the set's angle with their up side square to the axis") {
    const TransitionLayout layout = layout_with_station();
    const Roll centre = roll_of(layout, "centre"), wing_left = roll_of(layout, "wing +y"),
               wing_right = roll_of(layout, "wing -y");
    CHECK(wing_left.axis.z() / wing_left.axis.y() == doctest::Approx(std::tan(layout.trough.angle)));
    CHECK(wing_right.axis.z() / -wing_right.axis.y() == doctest::Approx(std::tan(layout.trough.angle)));
    for (const Roll& roll : {centre, wing_left, wing_right}) {
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

TEST_CASE("idler sets: two and five rolls are named from the centre outwards and left before right") {
    TransitionLayout layout = layout_with_station();
    CHECK(names_of(layout) == std::vector<std::string>{"centre", "wing +y", "wing -y"});
    CHECK(names_of(five_rolls()) == std::vector<std::string>{"centre", "inner wing +y", "inner wing -y", "wing +y", "wing -y"});
    layout.trough.rolls = 2;
    CHECK(names_of(layout) == std::vector<std::string>{"wing +y", "wing -y"});
}

TEST_CASE("idler sets: the wings of two rolls meet in the middle on the underside") {
    TransitionLayout layout = layout_with_station();
    layout.trough.rolls = 2;
    for (const char* name : {"wing +y", "wing -y"}) {
        const Roll wing = roll_of(layout, name);
        CHECK((on_contact_line(wing, -wing.half_length - 5) - Eigen::Vector3d(2400, 0, -underside)).norm() < 1e-10);
    }
}

TEST_CASE("idler sets: five rolls follow one another with a gap and each at its own angle") {
    const TransitionLayout layout = five_rolls();
    const Roll centre = roll_of(layout, "centre"), inner = roll_of(layout, "inner wing +y"), outer = roll_of(layout, "wing +y");
    CHECK((on_contact_line(centre, 130) - on_contact_line(inner, -130)).norm() < 1e-10);
    CHECK((on_contact_line(inner, 130) - on_contact_line(outer, -130)).norm() < 1e-10);
    CHECK(std::atan2(inner.axis.z(), inner.axis.y()) == doctest::Approx(layout.trough.inner_angle));
    CHECK(std::atan2(outer.axis.z(), outer.axis.y()) == doctest::Approx(layout.trough.angle));
    // An intermediate set keeps the angles' ratio.
    const Roll of_station = roll_of(layout, "inner wing +y", -1);
    CHECK(std::atan2(of_station.axis.z(), of_station.axis.y()) == doctest::Approx(0.3 * 25 / 55));
}

TEST_CASE("idler sets: facets add up to the belt and to the trough's depth") {
    const TransitionLayout layout = five_rolls();
    const std::vector<Facet> facets = layout.facets();
    REQUIRE(facets.size() == 3);
    CHECK(layout.junctions() == std::vector<double>{130, 390});
    CHECK(facets.back().end == 600);
    CHECK(layout.trough_depth() ==
          doctest::Approx(260 * std::sin(layout.trough.inner_angle) + 210 * std::sin(layout.trough.angle)));
}

TEST_CASE("idler sets: a tilted wing leans ahead in its own plane as the belt runs - the centre roll keeps square") {
    TransitionLayout layout = layout_with_station();
    layout.trough.wing_tilt = 0.05;
    for (const BeltEnd end : {BeltEnd::tail, BeltEnd::head}) {
        layout.pulley.end = end;
        const double ahead = end == BeltEnd::tail ? 1 : -1;  // a belt runs off the tail pulley and onto the head pulley
        for (const char* name : {"wing +y", "wing -y"}) {
            const Roll wing = roll_of(layout, name);
            CHECK(wing.axis.x() == doctest::Approx(ahead * std::sin(0.05)));
            CHECK(std::abs(wing.axis.z() / wing.axis.y()) == doctest::Approx(std::tan(layout.trough.angle)));
            CHECK(wing.up.x() == 0);
            CHECK(on_contact_line(wing, -wing.half_length - 5).x() == doctest::Approx(2400));
        }
        CHECK(roll_of(layout, "centre").axis.x() == 0);
    }
}

TEST_CASE("idler sets: an offset moves the centre roll alone and a right wing may have its own length") {
    TransitionLayout layout = layout_with_station();
    layout.trough.centre_offset = 160;
    layout.trough.wing_roll_right = 380;
    CHECK(roll_of(layout, "centre").centre.x() == 2560);
    CHECK(roll_of(layout, "wing +y").centre.x() == 2400);
    CHECK(roll_of(layout, "wing +y").half_length == 232.5);
    CHECK(roll_of(layout, "wing -y").half_length == 190);
    CHECK_FALSE(layout.same_left_and_right());
    CHECK_FALSE(layout.same_fore_and_aft());
}
