#include "solver/return_roll.h"
#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

// Strips with stress-free curvature that lie on a flat under their weight q per area, bending stiffness D across, small slopes.
// Derived here from D (w'' - k) = M, M'' = -q, with w = w' = 0 and M = -D k where the strip comes down on the flat.
//
//   edges bent up by k:    they lift over a length a with q a^2/2 = D k, the edge by q a^4/(8 D)
//   edges bent down by k:  if they are far apart, each stands on its edge with 3/4 q b, b = 2 sqrt(D k/q), and the strip comes
//                          down at b from it; between them the gap is q s^3 (b - s)/(24 D) at s from there
//   the same, near:        it stands on its edges alone above k = 5 q W^2/(48 D), its middle k W^2/8 - 5 q W^4/(384 D) high
//   creased by the angle:  it is off the flat over b to each side, b^3 = 3 D angle/(2 q), and q b^4/(8 D) - angle c/4 high
//   where
//                          the crease is spread over c to each side

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double gravity = 9806.65;
constexpr double bending = 6000, mass = 2e-8, load = mass * gravity;
constexpr double thickness = 4;

Section stiff_cover() {
    Section section;
    section.membrane = orthotropic(8000, 2000, 0, 300);
    section.bending = orthotropic(bending, bending, 0, bending / 2);
    section.thickness = thickness;
    section.underside = thickness / 2;
    section.mass = mass;
    section.foundation = 200;
    return section;
}

/// A roll so large, and rolls so near to each other, that the belt lies on a plane.
ReturnRun on_a_flat(double width) {
    return {stiff_cover(), width, 20, 20, 1e6, width / 4};
}

RollContact solved(const ReturnRun& run, const BeltMemory& memory) {
    RollContact contact = contact_on_return_roll(run, memory, {0.4});
    REQUIRE_MESSAGE(contact.converged, contact.reason);
    return contact;
}

/// Per length of belt [N/mm].
double force_between(const ReturnRun& run, const RollContact& contact, double from, double to) {
    double force = 0;
    for (const RollPressure& place : contact.pressure)
        if (place.y > from && place.y < to) force += place.force * place.width / run.spacing;
    return force;
}

Reference strip(double value, const char* unit, const std::string& conditions, double tolerance) {
    return {value,
            unit,
            "strip with stress-free curvature on a flat, derived in the test",
            Kind::closed_form,
            conditions,
            tolerance,
            "the cover gives way by up to 0.02 mm and the gap is read at points 1 to 3 mm apart"};
}

}  // namespace

TEST_CASE("Return roll: edges bent up lift as the closed form says") {
    const ReturnRun run = on_a_flat(1000);
    const double k = 4e-4, a = std::sqrt(2 * bending * k / load);
    const RollContact contact = solved(run, {k, 0, 0});
    check("height of the edge", strip(load * std::pow(a, 4) / (8 * bending), "mm", "k = 4e-4/mm", 0.03), contact.edge_gap);
    check("force where the edge lifts", strip(load * (a + 30), "N/mm", "within 30 mm", 0.03),
          force_between(run, contact, 500 - a - 30, 500));
    CHECK(force_between(run, contact, 500 - a + 20, 500) < 0.01 * load * a);
}

TEST_CASE("Return roll: edges bent down stand on three quarters of a free length") {
    const ReturnRun run = on_a_flat(1000);
    const double k = 1e-3, b = 2 * std::sqrt(bending * k / load);
    const RollContact contact = solved(run, {-k, 0, 0});
    check("force at the edge", strip(0.75 * load * b, "N/mm", "k = -1e-3/mm", 0.03), force_between(run, contact, 460, 501));
    check("widest gap", strip(27 * load * std::pow(b, 4) / (6144 * bending), "mm", "k = -1e-3/mm", 0.06), contact.widest_gap);
    CHECK(force_between(run, contact, 500 - b + 25, 460) < 0.01 * load * b);
    CHECK(force_between(run, contact, -100, 100) == doctest::Approx(200 * load).epsilon(0.02));
}

TEST_CASE("Return roll: a cupped strip stands on its edges alone above the curvature at which it is flattened") {
    const double width = 350, threshold = 5 * load * width * width / (48 * bending);
    const ReturnRun run = on_a_flat(width);
    const RollContact above = solved(run, {-1.3 * threshold, 0, 0});
    CHECK(force_between(run, above, -100, 100) < 1e-3 * load * width);
    check("force on one edge", strip(load * width / 2, "N/mm", "1.3 times the threshold", 0.005),
          force_between(run, above, 120, 176));
    const double middle = 0.3 * threshold * width * width / 8;
    check("height of the middle", strip(middle, "mm", "1.3 times the threshold", 0.06), above.widest_gap);
    const RollContact below = solved(run, {-0.9 * threshold, 0, 0});
    CHECK(force_between(run, below, -100, 100) > 0.02 * load * width);
}

TEST_CASE("Return roll: a crease lifts the belt to both sides of it") {
    const ReturnRun run = on_a_flat(1000);
    const double angle = 0.05, b = std::cbrt(1.5 * bending * angle / load);
    const double height = load * std::pow(b, 4) / (8 * bending) - angle * 2 * thickness / 4;
    const RollContact contact = solved(run, {0, -angle, -angle});
    check("height of the crease", strip(height, "mm", "0.05 rad", 0.03), contact.widest_gap);
    check("force where it comes down", strip(load * (b + 30), "N/mm", "within 30 mm", 0.03),
          force_between(run, contact, run.junction, run.junction + b + 30));
    CHECK(force_between(run, contact, run.junction - b + 20, run.junction + b - 20) < 0.01 * load * b);
}
