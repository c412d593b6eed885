#include "mesh/trough_profile.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace swale;

namespace {

constexpr double degree = std::numbers::pi / 180;

TransitionLayout layout_of(double angle, double junction_radius) {
    TransitionLayout layout;
    layout.belt_width = 1200;
    layout.trough.angle = angle;
    layout.trough.centre_roll = 465;
    layout.trough.roll_gap = 10;
    layout.trough.junction_radius = junction_radius;
    return layout;
}

const TroughProfile profile{35 * degree, 200, 150, 12};

Eigen::Vector2d slope_at(double s) {
    return (profile.at(s + 1e-4) - profile.at(s - 1e-4)) / 2e-4;
}

}  // namespace

TEST_CASE("trough profile: the way along it is the way across the belt so the belt is not stretched") {
    for (double s = -590.03; s < 600; s += 10) CHECK(slope_at(s).norm() == doctest::Approx(1).epsilon(1e-8));
}

TEST_CASE("trough profile: it is flat in the middle and rises at the trough angle beyond the arc") {
    const auto [first, last] = profile.arc_ends();
    CHECK((profile.at(150) - Eigen::Vector2d(150, 12)).norm() < 1e-12);
    CHECK(std::atan2(slope_at(last + 20).y(), slope_at(last + 20).x()) == doctest::Approx(35 * degree));
    CHECK(std::atan2(slope_at((first + last) / 2).y(), slope_at((first + last) / 2).x()) == doctest::Approx(17.5 * degree));
}

TEST_CASE("trough profile: position and slope run on where the arc begins and ends") {
    for (const double s : profile.arc_ends()) {
        CHECK((profile.at(s + 1e-9) - profile.at(s - 1e-9)).norm() < 1e-8);
        CHECK((slope_at(s + 2e-4) - slope_at(s - 2e-4)).norm() < 1e-5);
    }
}

TEST_CASE("trough profile: negative coordinates are the mirror image") {
    const Eigen::Vector2d left = profile.at(431), right = profile.at(-431);
    CHECK(left.x() == -right.x());
    CHECK(left.y() == right.y());
}

TEST_CASE("trough profile: the held belt lies on both rolls with its underside") {
    const double underside = 7;
    const TransitionLayout layout = layout_of(35 * degree, 150);
    const TroughProfile held = held_profile(layout, underside);
    const double s = held.arc_ends()[1] + 50;
    // The wing's roll surface goes through y = junction, z = -underside; the mid-surface lies `underside` above it.
    const Eigen::Vector2d up(-std::sin(35 * degree), std::cos(35 * degree));
    CHECK((held.at(s) - Eigen::Vector2d(layout.junction(), -underside)).dot(up) == doctest::Approx(underside).epsilon(1e-12));
    CHECK(held.at(10).y() == 0);
}

TEST_CASE("trough profile: a given flat width replaces the tangent one") {
    TransitionLayout layout = layout_of(35 * degree, 150);
    layout.trough.flat_width = 475;
    CHECK(held_profile(layout, 5).half_flat == 237.5);
}

TEST_CASE("trough profile: without a trough angle the belt is flat") {
    const TroughProfile flat = profile_at(layout_of(0, 0), 5, 0, 30);
    CHECK((flat.at(-600) - Eigen::Vector2d(-600, 30)).norm() < 1e-12);
}

TEST_CASE("trough profile: without a given radius the arc begins on the centre roll") {
    for (const double angle : {5 * degree, 20 * degree, 45 * degree, 60 * degree}) {
        const TroughProfile usual = profile_at(layout_of(angle, 0), 7, angle, 0);
        CHECK(usual.radius > 0);
        CHECK(usual.half_flat > 0);
    }
}

TEST_CASE("trough profile: on two and five rolls the belt starts from a place on all of them") {
    constexpr double underside = 7;
    TransitionLayout layout = layout_of(30 * degree, 0);
    const auto above = [&](const TroughProfile& profile, double s, const Eigen::Vector2d& meeting, double angle) {
        return (profile.at(s) - meeting).dot(Eigen::Vector2d(-std::sin(angle), std::cos(angle)));
    };
    layout.trough.rolls = 2;
    const TroughProfile pair = held_profile(layout, underside);
    CHECK(above(pair, 400, {0, -underside}, 30 * degree) == doctest::Approx(underside));
    CHECK(pair.at(0).y() > 0);

    layout.trough.rolls = 5;
    layout.trough.centre_roll = layout.trough.inner_roll = 250;
    layout.trough.roll_gap = 10;
    layout.trough.angle = 55 * degree;
    layout.trough.inner_angle = 25 * degree;
    const TroughProfile five = held_profile(layout, underside);
    const Eigen::Vector2d inner(130, -underside),
        outer = inner + 260 * Eigen::Vector2d(std::cos(25 * degree), std::sin(25 * degree));
    CHECK(above(five, 20, inner, 0) == doctest::Approx(underside));
    CHECK(above(five, 260, inner, 25 * degree) == doctest::Approx(underside));
    CHECK(above(five, 550, outer, 55 * degree) == doctest::Approx(underside));
}
