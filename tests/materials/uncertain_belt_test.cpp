#include "materials/uncertain_belt.h"

#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "materials/overrides.h"
#include "tests/materials/message_of.h"

#include <doctest/doctest.h>
#include <algorithm>
#include <cmath>
#include <tuple>

using namespace swale;

namespace {

double value_of(const Belt& belt, const std::string& name) {
    return entry_of(belt.data, name).value;
}

double share(const Belt& belt, const std::string& name) {
    return value_of(belt, name) / std::sqrt(value_of(belt, "D11") * value_of(belt, "D22"));
}

bool is_uncertain(const Belt& belt, const std::string& name) {
    const auto names = uncertain_data(belt);
    return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

TEST_CASE("every belt of the catalogue stays positive definite at either end of every range") {
    for (const BeltFamily& family : belt_families())
        for (const CarcassCode& carcass : family.carcasses) {
            const Belt belt = belt_from_designation(to_string(carcass) + " 6+3", 1200);
            for (const std::string& name : uncertain_data(belt)) {
                CAPTURE(belt.designation);
                CAPTURE(name);
                const Range& range = *entry_of(belt.data, name).range;
                CHECK(range.low < range.high);
                CHECK(value_of(at_end(belt, name, End::low), name) == range.low);
                CHECK(value_of(at_end(belt, name, End::high), name) == range.high);
            }
        }
}

TEST_CASE("the stiffnesses of ply and steel-cord belts are uncertain and so is their rating") {
    for (const char* designation : {"EP 800/4 6+3", "ST 1600 8+6"}) {
        const Belt belt = belt_from_designation(designation, 1200);
        for (const char* name : {"A22", "A12", "A66", "D11", "D22", "D12", "D66", "foundation"})
            CHECK_MESSAGE(is_uncertain(belt, name), name);
        CHECK(is_uncertain(belt, "rated_tension"));
        CHECK(is_uncertain(belt, "A11") == (belt.carcass == Carcass::textile));
    }
}

TEST_CASE("an end moves its datum and what is a share of it and nothing else") {
    const Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
    const Belt soft = at_end(belt, "D22", End::low), wide = at_end(belt, "A22", End::high);
    CHECK(soft.section.bending(1, 1) == doctest::Approx(1e3 * value_of(soft, "D22")));
    CHECK(soft.section.bending(0, 0) == belt.section.bending(0, 0));
    CHECK(share(soft, "D12") == doctest::Approx(share(belt, "D12")));
    CHECK(share(soft, "D66") == doctest::Approx(share(belt, "D66")));
    CHECK(soft.section.membrane == belt.section.membrane);
    CHECK(value_of(wide, "A12") / value_of(wide, "A22") == doctest::Approx(value_of(belt, "A12") / value_of(belt, "A22")));
    CHECK(wide.section.bending == belt.section.bending);
    const Belt twisted = at_end(belt, "D66", End::low);
    CHECK(twisted.section.bending(2, 2) < belt.section.bending(2, 2));
    CHECK(value_of(twisted, "D12") == value_of(belt, "D12"));
    CHECK(twisted.rated_tension == belt.rated_tension);
}

TEST_CASE("an end of the rating moves the rated tension alone") {
    for (const auto& [designation, low, high] :
         {std::tuple{"EP 800/4 6+3", 800 / 11.5, 800 / 9.0}, std::tuple{"ST 1600 8+6", 1600 / 7.0, 0.15 * 1600}}) {
        const Belt belt = belt_from_designation(designation, 1200);
        const Belt careful = at_end(belt, "rated_tension", End::low), bold = at_end(belt, "rated_tension", End::high);
        CHECK(*careful.rated_tension == doctest::Approx(low));
        CHECK(*bold.rated_tension == doctest::Approx(high));
        CHECK(careful.section.membrane == belt.section.membrane);
        CHECK(careful.section.bending == belt.section.bending);
        CHECK(careful.section.mass == belt.section.mass);
    }
}

TEST_CASE("an end of the thickness or the modulus is the belt that was measured so") {
    for (const char* designation : {"EP 800/4 6+3", "ST 1600 8+6", "PVG 1000/1 3+3"}) {
        const Belt belt = belt_from_designation(designation, 1200);
        CAPTURE(designation);
        for (const End end : {End::low, End::high}) {
            const Belt thick = at_end(belt, "thickness", end);
            Belt measured = belt;
            override_thickness(measured, value_of(thick, "thickness"));
            CHECK(thick.section.bending == measured.section.bending);
            CHECK(thick.section.mass == measured.section.mass);
            CHECK(thick.section.underside == measured.section.underside);
            CHECK((thick.section.bending(1, 1) > belt.section.bending(1, 1)) == (end == End::high));
            CHECK((thick.section.mass > belt.section.mass) == (end == End::high));
        }
        if (!is_uncertain(belt, "A11")) continue;
        Belt stiff = belt;
        override_modulus(stiff, value_of(at_end(belt, "A11", End::high), "A11"));
        CHECK(stiff.section.bending == at_end(belt, "A11", End::high).section.bending);
        CHECK(stiff.section.bending(0, 0) > belt.section.bending(0, 0));
    }
}

TEST_CASE("what a certificate gives has no range any more and a share of it keeps its own") {
    Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
    override_modulus(belt, 8200);
    override_troughability(belt, 0.2, belt.width);
    CHECK_FALSE(is_uncertain(belt, "A11"));
    CHECK_FALSE(is_uncertain(belt, "D22"));
    CHECK(is_uncertain(belt, "D66"));
    const Range& twist = *entry_of(belt.data, "D66").range;
    CHECK(twist.low < value_of(belt, "D66"));
    CHECK(twist.high > value_of(belt, "D66"));
    CHECK(contains(message_of<std::invalid_argument>([&] { at_end(belt, "A11", End::low); }), "A11"));
}

TEST_CASE("an end that a measured value contradicts is refused") {
    Belt belt = belt_from_designation("EP 800/4 6+3", 1200);
    override_modulus(belt, 400);
    CHECK(contains(message_of<std::invalid_argument>([&] { at_end(belt, "A12", End::high); }), "A12 at the high end"));
}

TEST_CASE("a value outside its range is the programmer's slip") {
    CHECK_THROWS_AS(ranged(datum("A11", 5, {"given", "test"}), 6, 7, "test"), std::logic_error);
}
