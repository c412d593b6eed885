#include "materials/steel_cord.h"

#include "materials/catalogue.h"
#include "tests/materials/reference_belts.h"

#include <doctest/doctest.h>
#include <cmath>
#include <numbers>
#include <string>

using namespace swale;

TEST_CASE("modulus over rating is about 72 and rated tension 15 percent for every published cord layer") {
    for (const CarcassCode& carcass : steel_cord_family().carcasses) {
        const CordLayer& cords = cord_layer(carcass.strength);
        CAPTURE(carcass.strength);
        CHECK(cords.modulus / cords.strength == doctest::Approx(72).epsilon(0.01));
        CHECK(cords.rated_tension == doctest::Approx(0.15 * cords.strength).epsilon(0.005));
    }
}

TEST_CASE("published mass of the cord layer is that of cords and of rubber between them") {
    // steel fills about 0.6 of a cord's circle, 7.85 g/cm^3; rubber of 1.2 fills the rest of one diameter
    for (const CarcassCode& carcass : steel_cord_family().carcasses) {
        const CordLayer& cords = cord_layer(carcass.strength);
        CAPTURE(carcass.strength);
        const double circle = std::numbers::pi / 4 * std::pow(cords.diameter, 2) / cords.pitch;
        const double mass = 7.85 * 0.6 * circle + 1.2 * (cords.diameter - circle);
        CHECK(cords.mass == doctest::Approx(mass).epsilon(0.12));
    }
}

TEST_CASE("thickness of another maker's steel-cord belts is met within 7 percent") {
    for (const PublishedCordBelt& published : published_cord_belts) {
        CAPTURE(published.strength);
        const std::string cover = std::to_string(published.cover);
        const Belt belt = belt_from_designation("ST " + std::to_string(published.strength) + " " + cover + "+" + cover, 1200);
        CHECK(belt.section.thickness == doctest::Approx(published.thickness).epsilon(0.07));
    }
}

TEST_CASE("mass of a belt in a project data sheet is met within 6 percent") {
    // ST 1000, covers 12+6 mm, 1200 mm wide, about 33.1 kg/m: project data sheet of an iron-ore conveyor
    const Belt belt = belt_from_designation("ST 1000 12+6", 1200);
    CHECK(belt.section.mass * 1e9 * 1.2 == doctest::Approx(33.1).epsilon(0.06));
}

TEST_CASE("rubber governs a steel-cord belt across and in shear") {
    // 5 to 10 MPa and 1 to 3 MPa x thickness, from memory (not sure); a closely corded belt may exceed the first a little
    for (const std::string designation : {"ST 800 5+5", "ST 1600 8+6", "ST 7000 10+8"}) {
        CAPTURE(designation);
        const Section section = belt_from_designation(designation, 1200).section;
        CHECK(section.membrane(1, 1) / section.thickness > 5);
        CHECK(section.membrane(1, 1) / section.thickness < 11);
        CHECK(section.membrane(2, 2) / section.thickness > 1);
        CHECK(section.membrane(2, 2) / section.thickness < 3);
        CHECK(section.bending(0, 0) > section.bending(1, 1));
    }
}

TEST_CASE("cords bend more freely than if their wires were bonded") {
    for (const CarcassCode& carcass : steel_cord_family().carcasses) {
        const Belt belt = belt_from_designation(to_string(carcass) + " 8+6", 1200);
        const double cord_part = belt.section.bending(0, 0) - belt.section.bending(1, 1);
        const CordLayer& cords = cord_layer(carcass.strength);
        CHECK(cord_part > 0);
        // bonded round bar: A11 d^2/16
        CHECK(cord_part < 0.1 * cords.modulus * std::pow(cords.diameter, 2) / 16);
    }
}
