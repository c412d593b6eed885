#include "materials/contradictions.h"

#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "materials/overrides.h"
#include "tests/materials/message_of.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

Belt usual_belt() {
    return belt_from_designation("EP 800/4 6+3", 1200);
}

/// The one warning of the belt after `measure`, with the elongation of its certificate if there is one; empty if none.
template <class Measure>
std::string warning_after(const Measure& measure, std::optional<double> elongation = {}) {
    Belt belt = usual_belt();
    measure(belt);
    warn_of_contradictions(usual_belt(), elongation, belt);
    CHECK(belt.warnings.size() <= 1);
    return belt.warnings.empty() ? "" : belt.warnings.front();
}

std::string warning_of_modulus(double modulus, std::optional<double> elongation = {}) {
    return warning_after([&](Belt& belt) { override_modulus(belt, modulus); }, elongation);
}

}  // namespace

TEST_CASE("the secant of an elongation is a tenth of the strength over it and takes A11 with an open upper end") {
    Belt belt = usual_belt();
    override_elongation(belt, 0.02);
    CHECK(belt.section.membrane(0, 0) == doctest::Approx(4000));
    const BeltDatum& entry = entry_of(belt.data, "A11");
    CHECK(entry.origin.grade == "given");
    CHECK(contains(entry.origin.source, "2 % at a tenth of the breaking strength (ISO 283)"));
    CHECK(entry.range->low == entry.value);
    CHECK(entry.range->high == doctest::Approx(9600));
    override_elongation(belt, 0.005);
    CHECK_FALSE(entry_of(belt.data, "A11").range);
    for (double wrong : {0.0, -0.01, std::nan("")}) CHECK_THROWS_AS(override_elongation(belt, wrong), std::invalid_argument);
    belt.strength.reset();
    CHECK(contains(message_of<std::invalid_argument>([&] { override_elongation(belt, 0.02); }), "strength"));
}

TEST_CASE("a modulus below the secant of its own certificate or far above it contradicts the elongation") {
    CHECK(warning_of_modulus(8000, 0.015).empty());
    CHECK(contains(warning_of_modulus(6000, 0.01), "secant of 8000 N/mm"));
    CHECK(contains(warning_of_modulus(6000, 0.01), "can't be lower"));
    CHECK(contains(warning_of_modulus(9000, 0.03), "3.4 times the secant of 2667 N/mm"));
}

TEST_CASE("a modulus or a thickness that no belt of the construction has is taken with a warning") {
    CHECK(warning_of_modulus(5000).empty());
    CHECK(contains(warning_of_modulus(80000), "have 5600 to 9600"));
    CHECK(contains(warning_of_modulus(800), "check the designation and the unit"));
    CHECK(contains(warning_after([](Belt& belt) { override_thickness(belt, 22), override_mass(belt, 27e-9); }),
                   "thickness of 22 mm"));
}

TEST_CASE("mass and thickness that mean no density of a belt are a warning and so is a rating without safety") {
    CHECK(contains(warning_after([](Belt& belt) { override_mass(belt, 10e-9); }), "mean 0.71 g/cm^3"));
    CHECK(contains(warning_after([](Belt& belt) { override_mass(belt, 27e-9); }), "check mass and thickness"));
    CHECK(contains(warning_after([](Belt& belt) { override_rated_tension(belt, 800); }), "over 1.0"));
    CHECK(warning_after([](Belt& belt) { override_rated_tension(belt, 89); }).empty());
}

TEST_CASE("what nobody measured is no contradiction") {
    for (const char* designation : {"EP 800/4 6+3", "ST 7000 10+8", "CC 112/2 20+10", "PVC 1000/1 1+1"}) {
        Belt belt = belt_from_designation(designation, 1200);
        warn_of_contradictions(belt, {}, belt);
        CHECK_MESSAGE(belt.warnings.empty(), designation);
    }
}
