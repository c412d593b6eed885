#include "materials/catalogue.h"
#include "solver/return_roll.h"
#include "solver/wear/pressure_shape.h"

#include <doctest/doctest.h>

#include <cmath>

// A fabric belt of 1200 mm on return rolls 3 m apart.

using namespace swale;

namespace {

constexpr double gravity = 9806.65;

ReturnRun fabric_run() {
    return {belt_from_designation("EP 800/4 6+3", 1200).section, 1200, 15e3, 3000, 133, 225};
}

RollContact solved(const ReturnRun& run, const BeltMemory& memory, double grid = 1) {
    RollContact contact = contact_on_return_roll(run, memory, {grid});
    REQUIRE_MESSAGE(contact.converged, contact.reason);
    return contact;
}

/// Mean force per length of roll, 1 of an even pressure.
double mean(const ReturnRun& run, const RollContact& contact, double from, double to) {
    double force = 0;
    for (const RollPressure& place : contact.pressure)
        if (place.y > from && place.y < to) force += place.force * place.width;
    return force / (to - from) / (contact.force / run.width);
}

double fold(double degrees) {
    return degrees * 3.14159265358979323846 / 180;
}

}  // namespace

TEST_CASE("A return roll bears the weight of one spacing of belt") {
    const ReturnRun run = fabric_run();
    const double weight = run.section.mass * gravity * run.width * run.spacing;
    for (const BeltMemory& memory : {BeltMemory{}, {-1e-3, 0, 0}, {1e-3, 0, 0}, {0, -0.3, -0.3}, {0, -0.3, 0}})
        CHECK(solved(run, memory).force == doctest::Approx(weight).epsilon(0.002));
}

TEST_CASE("A flat belt presses evenly") {
    const ReturnRun run = fabric_run();
    const RollContact contact = solved(run, {});
    for (double y = -600; y < 600; y += 100) CHECK(mean(run, contact, y, y + 100) == doctest::Approx(1).epsilon(0.08));
}

TEST_CASE("The trade's signs come out of the shell") {  // common practice, no source
    const ReturnRun run = fabric_run();
    SUBCASE("junction failure: contact at edges and centre with gaps at the junctions") {
        const RollContact contact = solved(run, {0, fold(-15), fold(-15)});
        CHECK(mean(run, contact, 500, 600) > 0.5);
        CHECK(mean(run, contact, -50, 50) > 0.5);
        CHECK(mean(run, contact, 175, 275) < 0.01);
        CHECK(contact.widest_gap > 2);
    }
    SUBCASE("cupping: contact at the edges alone of a belt that is stiff across") {
        ReturnRun stiff = run;
        stiff.section.bending(1, 1) *= 30;
        const RollContact contact = solved(stiff, {-6e-4, 0, 0});
        CHECK(mean(stiff, contact, 500, 600) > 5);
        CHECK(mean(stiff, contact, -450, 450) < 0.05);
    }
    SUBCASE("cupping: a limp belt lies down in the middle again and wears the roll most at the edges") {
        const RollContact contact = solved(run, {-1e-3, 0, 0});
        CHECK(mean(run, contact, 560, 600) > 2);
        CHECK(mean(run, contact, -100, 100) > 0.5);
    }
    SUBCASE("cupping the other way: contact in the centre") {
        const RollContact contact = solved(run, {1e-3, 0, 0});
        CHECK(mean(run, contact, 500, 600) < 0.01);
        CHECK(mean(run, contact, -300, 300) > 1.2);
    }
    SUBCASE("creased on one side: a gap there alone") {
        const RollContact contact = solved(run, {0, fold(-15), 0});
        CHECK(mean(run, contact, 200, 250) < 0.01);
        CHECK(mean(run, contact, -250, -200) > 0.8);
    }
}

TEST_CASE("One crease is half of two where the middle lies on the roll") {
    const ReturnRun run = fabric_run();
    const double angle = fold(-12);
    const PressureShape flat = pressure_shape(solved(run, {}).pressure);
    const PressureShape two = pressure_shape(solved(run, {0, angle, angle}).pressure);
    const Exposure whole(pressure_shape(solved(run, {0, angle, 0}).pressure), run.width, 15);
    const Exposure halves(joined(two, flat), run.width, 15);
    double sum = 0;
    for (double y = -500; y <= 500; y += 25) {
        CHECK(std::abs(whole.at(y) - halves.at(y)) < 0.4);  // where the belt comes down, some mm nearer to one crease
        sum += std::abs(whole.at(y) - halves.at(y));
    }
    CHECK(sum / 41 < 0.1);  // a tenth of an even pressure: below what a gauge on a worn roll tells
}

TEST_CASE("A finer grid does not move the pattern") {
    const ReturnRun run = fabric_run();
    for (const BeltMemory& memory : {BeltMemory{-1e-3, 0, 0}, {1e-3, 0, 0}, {0, fold(-15), fold(-15)}}) {
        const Exposure coarse(pressure_shape(solved(run, memory).pressure), run.width, 15);
        const Exposure fine(pressure_shape(solved(run, memory, 0.5).pressure), run.width, 15);
        for (double y = -550; y <= 550; y += 50) CHECK(std::abs(coarse.at(y) - fine.at(y)) < 0.15);
    }
}

TEST_CASE("A shape keeps the force where it was") {
    const PressureShape shape = pressure_shape({{-50, 100, 2}, {50, 100, 2}});  // even over 200 mm
    const Exposure exposure(shape, 200, 10);
    CHECK(exposure.at(0) == doctest::Approx(1).epsilon(0.02));
    CHECK(exposure.at(100) == doctest::Approx(0.5).epsilon(0.05));
    CHECK(exposure.at(160) == doctest::Approx(0));
    CHECK(exposure.over(-200, 200) * 400 == doctest::Approx(200).epsilon(1e-3));
}
