#include "materials/overrides.h"

#include "materials/catalogue.h"
#include "tests/materials/message_of.h"

#include <doctest/doctest.h>
#include <algorithm>
#include <cmath>
#include <utility>

using namespace swale;

namespace {

const BeltDatum& entry_of(const Belt& belt, const std::string& name) {
    return *std::find_if(belt.data.begin(), belt.data.end(), [&](const BeltDatum& entry) { return entry.name == name; });
}

double contraction(const Section& section) {
    return section.membrane(0, 1) / section.membrane(1, 1);
}

}  // namespace

TEST_CASE("a measured modulus replaces A11 and leaves contraction and all else") {
    const Belt before = belt_from_designation("EP 800/4 6+3", 1200);
    Belt belt = before;
    override_modulus(belt, 6500);
    CHECK(belt.section.membrane(0, 0) == 6500);
    CHECK(contraction(belt.section) == doctest::Approx(contraction(before.section)));
    CHECK(belt.section.membrane(1, 1) == before.section.membrane(1, 1));
    CHECK(why_not_positive_definite(belt.section.membrane, "A").empty());
    CHECK(belt.data.size() == before.data.size());
    CHECK(entry_of(belt, "A11").value == 6500);
    CHECK(entry_of(belt, "A11").origin.grade == "given");
    CHECK(entry_of(belt, "A22").origin.grade == "derived");
}

TEST_CASE("the bending stiffness along of plies follows a measured modulus as it does in their construction") {
    const Belt before = belt_from_designation("EP 800/4 6+3", 1200);
    Belt belt = before;
    override_modulus(belt, 4 * 2000);  // the catalogue's own
    CHECK(belt.section.bending == before.section.bending);
    override_modulus(belt, 2 * 2000);
    // the carcass's part goes with sqrt(A11/A22), here from 2 to sqrt 2 times that across; covers stay
    const double along = before.section.bending(0, 0), across = before.section.bending(1, 1);
    const double carcass = along - across;  // (2 - 1) times that across
    CHECK(belt.section.bending(0, 0) == doctest::Approx(across + (std::sqrt(2) - 1) * carcass));
    CHECK(belt.section.bending(1, 1) == across);
    Belt cords = belt_from_designation("ST 1600 8+6", 1200);
    const Eigen::Matrix3d free_wires = cords.section.bending;
    override_modulus(cords, 100e3);
    CHECK(cords.section.bending == free_wires);
}

TEST_CASE("a measured thickness is the carcass's and mass and stiffnesses follow from the construction") {
    const Belt before = belt_from_designation("EP 800/4 6+3", 1200);
    Belt belt = before;
    override_thickness(belt, 15.0);
    const double thicker = 15.0 - before.section.thickness, carcass = before.section.thickness - 9;
    CHECK(belt.section.thickness == 15.0);
    CHECK(belt.section.underside == doctest::Approx(before.section.underside + thicker / 2));
    CHECK(belt.section.mass == doctest::Approx(before.section.mass + 1.35e-9 * thicker));
    CHECK(belt.section.membrane(2, 2) == doctest::Approx(before.section.membrane(2, 2) * (carcass + thicker) / carcass));
    CHECK(belt.section.membrane(0, 0) == before.section.membrane(0, 0));
    CHECK(belt.section.bending(1, 1) > before.section.bending(1, 1) * (1 + thicker / carcass));  // with the square, less rubber
    CHECK(belt.section.bending(1, 1) < before.section.bending(1, 1) * std::pow(1 + thicker / carcass, 3));
    CHECK(belt.section.foundation == before.section.foundation);
    const Origin& origin = entry_of(belt, "thickness").origin;
    CHECK(origin.grade == "given");
    CHECK(contains(origin.source, "carcass has the rest"));
    CHECK_FALSE(entry_of(belt, "thickness").range.has_value());
    // as thick as the catalogue has it, nothing changes
    Belt same = before;
    override_thickness(same, before.section.thickness);
    CHECK(same.section.bending.isApprox(before.section.bending, 1e-12));
    CHECK(same.section.mass == doctest::Approx(before.section.mass));
}

TEST_CASE("thicker cords of the same strength are the same steel with more rubber") {
    const Belt before = belt_from_designation("ST 1600 8+6", 1200);
    Belt belt = before;
    override_thickness(belt, before.section.thickness + 0.65);
    CHECK(belt.section.mass == doctest::Approx(before.section.mass + 1.2e-9 * 0.65));
    CHECK(belt.section.membrane(0, 0) == before.section.membrane(0, 0));
    CHECK(belt.section.bending(1, 1) > before.section.bending(1, 1));
    const double wires = before.section.bending(0, 0) - before.section.bending(1, 1), d = 5.2;
    // n wires a cord, their fourth power over a pitch that goes with the square
    CHECK(belt.section.bending(0, 0) - belt.section.bending(1, 1) == doctest::Approx(wires * std::pow((d + 0.65) / d, 2)));
}

TEST_CASE("what a certificate gives stays whichever is taken first") {
    const auto measured = [](bool thickness_first) {
        Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
        override_mass(belt, 18e-9);
        if (thickness_first) override_thickness(belt, 14.6), override_modulus(belt, 7600);
        if (!thickness_first) override_modulus(belt, 7600), override_thickness(belt, 14.6);
        override_troughability(belt, 0.2, 1200);
        override_thickness(belt, 14.6);
        return belt;
    };
    const Belt one = measured(true), other = measured(false);
    CHECK(one.section.bending.isApprox(other.section.bending, 1e-12));
    CHECK(one.section.mass == doctest::Approx(18e-9));
    CHECK(one.section.membrane(0, 0) == 7600);
    CHECK(entry_of(one, "D22").origin.grade == "given");
    Belt last = belt_from_designation("EP 800/4 6+3", 1200);
    override_mass(last, 18e-9), override_modulus(last, 7600), override_thickness(last, 14.6);
    override_troughability(last, 0.2, 1200);
    CHECK(one.section.bending.isApprox(last.section.bending, 1e-12));
}

TEST_CASE("a thickness into which no carcass fits is refused and leaves the belt alone") {
    for (const auto& [designation, thickness] : {std::pair{"EP 800/4 6+3", 9.0}, std::pair{"ST 2500 8+6", 16.0}}) {
        Belt belt = belt_from_designation(designation, 1200);
        const Section before = belt.section;
        CHECK_THROWS_AS(override_thickness(belt, thickness), std::invalid_argument);
        CHECK(belt.section.thickness == before.thickness);
        CHECK(belt.section.bending == before.bending);
    }
    Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
    CHECK(contains(message_of<std::invalid_argument>([&] { override_thickness(belt, 8); }),
                   "covers of the designation alone have 9 mm"));
}

TEST_CASE("a modulus that breaks positive definiteness is refused and leaves the belt alone") {
    Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
    const Section before = belt.section;
    const std::string why = message_of<std::invalid_argument>([&] { override_modulus(belt, 50); });
    CHECK(contains(why, "modulus of 50"));
    CHECK(contains(why, "A12"));
    CHECK(belt.section.membrane == before.membrane);
    CHECK(entry_of(belt, "A11").origin.grade == "derived");
}

TEST_CASE("a given rated tension replaces that of the catalogue") {
    Belt belt = belt_from_designation("ST 1600 8+6", 1200);
    override_rated_tension(belt, 229);
    CHECK(*belt.rated_tension == 229);
    CHECK(entry_of(belt, "rated_tension").value == 229);
    CHECK(entry_of(belt, "rated_tension").origin.grade == "given");
}

TEST_CASE("overrides that are not positive numbers are refused") {
    Belt belt = belt_from_designation("ST 1600 8+6", 1200);
    for (double value : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
        CHECK_THROWS_AS(override_modulus(belt, value), std::invalid_argument);
        CHECK_THROWS_AS(override_rated_tension(belt, value), std::invalid_argument);
    }
}
