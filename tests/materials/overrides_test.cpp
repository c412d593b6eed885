#include "materials/overrides.h"

#include "materials/catalogue.h"
#include "tests/materials/message_of.h"

#include <doctest/doctest.h>
#include <algorithm>
#include <cmath>

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
    CHECK(belt.section.bending == before.section.bending);
    CHECK(why_not_positive_definite(belt.section.membrane, "A").empty());
    CHECK(belt.data.size() == before.data.size());
    CHECK(entry_of(belt, "A11").value == 6500);
    CHECK(entry_of(belt, "A11").origin.grade == "given");
    CHECK(entry_of(belt, "A22").origin.grade == "derived");
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
