#include "mesh/measured_set.h"

#include "tests/mesh/measured_as_drawn.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace swale;

namespace {

constexpr double degree = std::numbers::pi / 180;

TransitionLayout three_rolls() {
    TransitionLayout layout;
    layout.belt_width = 1200;
    layout.distance = 2400;
    layout.pulley.diameter = 630;
    layout.trough = {35 * degree, 465, 465, 10, 5, 152, 1200, {}, Support::rolls, {}, 0};
    layout.stations.push_back({1000, 0.3, 20, Support::rolls});
    return layout;
}

TransitionLayout two_rolls() {
    TransitionLayout layout = three_rolls();
    layout.trough.rolls = 2;
    layout.trough.wing_roll = 700;
    return layout;
}

TransitionLayout five_rolls() {
    TransitionLayout layout = three_rolls();
    layout.trough.rolls = 5;
    layout.trough.inner_angle = 20 * degree;
    layout.trough.centre_roll = layout.trough.inner_roll = layout.trough.wing_roll = 250;
    return layout;
}

TransitionLayout out_of_plane() {
    TransitionLayout layout = three_rolls();
    layout.trough.wing_roll_right = 400;
    layout.trough.wing_tilt = 3 * degree;
    layout.trough.centre_offset = 160;
    return layout;
}

IdlerSet measured_first_set(TransitionLayout& layout) {
    measure_first_set(layout, measured_as_drawn(layout, idler_sets(layout, 1).back()));
    return idler_sets(layout, 1).back();
}

void check_same_rolls(const TransitionLayout& layout, const IdlerSet& drawn, const IdlerSet& measured) {
    const std::vector<SetRoll> one = rolls_of(layout, drawn, 7), other = rolls_of(layout, measured, 7);
    REQUIRE(one.size() == other.size());
    for (std::size_t k = 0; k < one.size(); ++k) {
        CAPTURE(one[k].name);
        CHECK(one[k].name == other[k].name);
        CHECK((one[k].roll.centre - other[k].roll.centre).norm() < 1e-9);
        CHECK((one[k].roll.axis - other[k].roll.axis).norm() < 1e-12);
        CHECK((one[k].roll.up - other[k].roll.up).norm() < 1e-12);
        CHECK(one[k].roll.half_length == other[k].roll.half_length);
        CHECK(one[k].facet.end == other[k].facet.end);
        CHECK(one[k].x == doctest::Approx(other[k].x));
    }
}

}  // namespace

TEST_CASE("a set that was measured where it was drawn has the drawn rolls whatever its kind") {
    for (TransitionLayout layout : {three_rolls(), two_rolls(), five_rolls(), out_of_plane()}) {
        const IdlerSet drawn = idler_sets(layout, 1).back();
        check_same_rolls(layout, drawn, measured_first_set(layout));
    }
}

TEST_CASE("a measured station goes along with place and height and turns with its angle as a drawn one does") {
    TransitionLayout layout = three_rolls(), measured = layout;
    measured.stations[0].measured =
        std::make_shared<const MeasuredSet>(measured_as_drawn(layout, idler_sets(layout, 1).front()));
    for (TransitionLayout* one : {&layout, &measured}) {
        one->stations[0].at = 1100;
        one->stations[0].lift = 35;
        one->stations[0].angle = 0.35;
    }
    const std::vector<SetRoll> drawn = rolls_of(layout, idler_sets(layout, 1).front(), 7),
                               moved = rolls_of(measured, idler_sets(measured, 1).front(), 7);
    for (std::size_t k = 0; k < drawn.size(); ++k) {
        CHECK((drawn[k].roll.axis - moved[k].roll.axis).norm() < 1e-12);
        // Turned about its own end, half a gap of 10 mm from where the lines meet: 0.05 rad of 5 mm.
        CHECK((drawn[k].roll.centre - moved[k].roll.centre).norm() < 0.26);
    }
}

TEST_CASE("a measured set stands its ahead and height from where it was drawn") {
    TransitionLayout layout = three_rolls();
    MeasuredSet measured = measured_as_drawn(layout, idler_sets(layout, 1).back());
    measured.ahead = -15;
    measured.height = 12;
    measured.angle += 0.01;
    measure_first_set(layout, measured);
    const std::vector<IdlerSet> sets = idler_sets(layout, 2);
    CHECK(sets[1].x == 2385);
    CHECK(sets[1].lift == 12);
    CHECK(sets[1].angle == doctest::Approx(35 * degree + 0.01));
    CHECK(sets[2].x == 3600);
    CHECK(sets[2].lift == 0);
    CHECK(rolls_of(layout, sets[1], 7)[0].roll.centre.isApprox(Eigen::Vector3d(2385, 0, 12 - 7 - 76)));
}

TEST_CASE("left and right are the same only where every measured set is its own mirror image") {
    for (TransitionLayout layout : {three_rolls(), two_rolls(), five_rolls()}) {
        const IdlerSet drawn = idler_sets(layout, 1).back();
        MeasuredSet measured = measured_as_drawn(layout, drawn);
        measure_first_set(layout, measured);
        CHECK(layout.same_left_and_right());
        CHECK(layout.any_measured());
        measured.rolls[1].left.z() += 0.1;
        measure_first_set(layout, measured);
        CHECK_FALSE(layout.same_left_and_right());
        measure_first_set(layout, mirrored(measured));
        CHECK_FALSE(layout.same_left_and_right());
    }
    CHECK_FALSE(three_rolls().any_measured());
}

TEST_CASE("a roll that slopes has its contact line above the axis in the plane across the conveyor") {
    const MeasuredRoll roll{{10, -200, 0}, {-20, 180, 90}};
    const auto [axis, up] = directions_of(roll);
    CHECK(std::abs(axis.dot(up)) < 1e-15);
    CHECK(up.x() == 0);
    CHECK(up.z() > 0);
    CHECK(slope_of(roll) == doctest::Approx(std::atan2(90, 380)));
}

TEST_CASE("an endless trough is modelled with a drawn set behind the last measured one") {
    TransitionLayout layout = three_rolls();
    CHECK(layout.first_sets() == 3);
    const auto any = std::make_shared<const MeasuredSet>(measured_as_drawn(layout, idler_sets(layout, 1).back()));
    layout.measured = {any, any, nullptr, any};
    CHECK(layout.first_sets() == 5);
}
