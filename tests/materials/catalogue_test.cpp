#include "materials/catalogue.h"

#include "materials/data_sheet.h"
#include "tests/materials/message_of.h"

#include <doctest/doctest.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

using namespace swale;

namespace {

std::string refusal(const std::string& text) {
    return message_of<BadDesignation>([&] { belt_from_designation(text, 1200); });
}

/// Calls `see` with every carcass of the catalogue under thin, usual and thick covers.
template <class See>
void for_every_belt(See see) {
    for (const BeltFamily& family : belt_families())
        for (const CarcassCode& carcass : family.carcasses)
            for (const char* covers : {" 3+3", " 6+3", " 20+10"}) see(belt_from_designation(to_string(carcass) + covers, 1200));
}

}  // namespace

TEST_CASE("every belt of the catalogue has a positive definite section") {
    for_every_belt([](const Belt& belt) {
        CHECK_MESSAGE(why_not_positive_definite(belt.section.membrane, "A").empty(), belt.designation);
        CHECK_MESSAGE(why_not_positive_definite(belt.section.bending, "D").empty(), belt.designation);
    });
}

TEST_CASE("every belt of the catalogue has plausible body and foundation") {
    for_every_belt([](const Belt& belt) {
        CAPTURE(belt.designation);
        // rubber alone has 1.2, a polyamide weft carcass 1.35, the lightest published polyester one 1.07, the densest cord
        // layer 3.3
        const double density = belt.section.mass / belt.section.thickness * 1e9;  // kg/m^2 per mm
        CHECK(density > 1.07);
        CHECK(density < (belt.carcass == Carcass::textile ? 1.35 : 2.7));
        CHECK(belt.section.underside > 3);
        CHECK(belt.section.underside < belt.section.thickness);
        CHECK(belt.section.foundation > 0.5);
        CHECK(belt.section.foundation < 5);
    });
}

TEST_CASE("bending stiffness lies well below that of one solid sheet") {
    for_every_belt([](const Belt& belt) {
        const double solid = belt.section.membrane(0, 0) * std::pow(belt.section.thickness, 2) / 12;
        CHECK_MESSAGE(belt.section.bending(0, 0) < 0.5 * solid, belt.designation);
    });
}

TEST_CASE("every number of a belt has a grade and a source and every key of the section is listed") {
    constexpr std::array grades{"given", "published", "derived", "common practice", "from memory"};
    for_every_belt([&](const Belt& belt) {
        CHECK(belt.data.size() == 13);
        for (const BeltDatum& entry : belt.data) {
            CAPTURE(entry.name);
            CHECK(std::find(grades.begin(), grades.end(), entry.origin.grade) != grades.end());
            CHECK_FALSE(entry.origin.source.empty());
            CHECK_FALSE(entry.unit.empty());
        }
        CHECK(internal_value(belt.data, "rated_tension") == *belt.rated_tension);
    });
}

TEST_CASE("a belt keeps the designation as given and knows its carcass") {
    const Belt textile = belt_from_designation("ep 800/4  6+3", 1200);
    CHECK(textile.designation == "ep 800/4  6+3");
    CHECK(textile.carcass == Carcass::textile);
    CHECK(textile.width == 1200);
    CHECK(belt_from_designation("ST 1600 8+6", 1200).carcass == Carcass::steel_cord);
}

TEST_CASE("an unknown carcass is refused with the nearest known") {
    CHECK(contains(refusal("EP 810/4 6+3"), "nearest are 'EP 800/4'"));
    CHECK(contains(refusal("EP 810/4 6+3"), "with 4 plies: 400, 500"));
    CHECK(contains(refusal("EP 800 6+3"), "'EP 800/4'"));
    CHECK(contains(refusal("EP 800/40 6+3"), "nearest are"));
    CHECK(contains(refusal("ST 1700 8+6"), "nearest are 'ST 1600'"));
    CHECK(contains(refusal("ST 1600/4 8+6"), "nearest are 'ST 1600'"));
    CHECK(contains(refusal("ST 0 8+6"), "nearest are 'ST 500'"));
    CHECK(contains(refusal("ST 700 8+6"), "nearest are 'ST 630', 'ST 800'"));
}

TEST_CASE("an unknown family is refused with the families that are known and the one probably meant") {
    const std::string why = refusal("XY 800/4 6+3");
    CHECK(contains(why, "unknown belt family 'XY'; known are"));
    CHECK(contains(why, "EP (plies"));
    CHECK(contains(why, "ST (steel cords"));
    CHECK(contains(refusal("PE 800/4 6+3"), "did you mean 'EP'?"));
    CHECK(contains(refusal("DP 1250/1 6+4"), "did you mean 'DPP'?"));
    CHECK(contains(refusal("STT 1600 8+6"), "did you mean 'ST'?"));
    CHECK(contains(refusal("EN 800/4 6+3"), "did you mean 'EP'?"));
    CHECK(contains(refusal("Aramid 1250/1 6+4"), "did you mean 'DPP'?"));
    CHECK_FALSE(contains(why, "did you mean"));
}

TEST_CASE("words that can't be read as a designation are refused with the family they mean") {
    CHECK(contains(refusal("aramid"), "'ARAMID' is no belt family, did you mean 'DPP'?"));
    CHECK(contains(refusal("armid 1250/1 6+4"), "did you mean 'DPP'?"));
    CHECK(contains(refusal("nylon 4 ply"), "did you mean 'NN'?"));
    CHECK(contains(refusal("steel cord 1600 8+6"), "did you mean 'ST'?"));
    CHECK_FALSE(contains(refusal("EP 800/4"), "is no belt family"));
    CHECK_FALSE(contains(refusal("PN 800/4"), "is no belt family"));
}

TEST_CASE("other letters for a family are taken and those of two meanings with a warning") {
    const Belt PN = belt_from_designation("PN 800/4 6+3", 1200), PP = belt_from_designation("PP 800/4 6+3", 1200);
    CHECK(PN.data.front().value == belt_from_designation("EP 800/4 6+3", 1200).data.front().value);
    CHECK(PN.warnings.empty());
    CHECK(PP.data.front().value == belt_from_designation("EE 800/4 6+3", 1200).data.front().value);
    REQUIRE(PP.warnings.size() == 1);
    CHECK(contains(PP.warnings.front(), "write NN"));
}

TEST_CASE("a strength given per ply is refused with the whole belt's") {
    CHECK(contains(refusal("EP 200/4 6+3"), "if each ply has 200 N/mm write 'EP 800/4'"));
    CHECK(contains(refusal("CC-56/4 4+2"), "if each ply has 56 N/mm write 'CC 224/4'"));
    CHECK_FALSE(contains(refusal("EP 810/4 6+3"), "each ply"));
    CHECK(contains(refusal("EP 4/200 6+3"), "4 plies of 200 N/mm are 'EP 800/4'"));
}

TEST_CASE("every family has a belt of its example and more than three carcasses") {
    CHECK(belt_families().size() == 9);
    for (const BeltFamily& family : belt_families()) {
        CHECK(family.carcasses.size() > 3);
        const std::string example = family.form.substr(family.form.find("as in ") + 6);
        CHECK_MESSAGE(belt_from_designation(example, 1000).section.thickness > 5, example);
    }
}

TEST_CASE("at equal strength polyamide stretches more than polyester and aramid less") {
    const auto modulus = [](const char* designation) {
        return belt_from_designation(designation, 1200).section.membrane(0, 0);
    };
    CHECK(modulus("NN 1000/4 6+3") < modulus("EP 1000/4 6+3"));
    CHECK(modulus("EP 1000/4 6+3") < modulus("EE 1000/4 6+3"));
    CHECK(modulus("EE 1000/4 6+3") < modulus("DPP 1000/1 6+3"));
    CHECK(modulus("DPP 1000/1 6+3") < modulus("ST 1000 6+3"));
    CHECK(modulus("PVG 1000/1 6+3") < modulus("EP 1000/4 6+3"));
    CHECK(modulus("CC 336/6 6+3") < modulus("EP 315/2 6+3"));
}

TEST_CASE("covers and widths out of range are refused with the range") {
    CHECK(contains(refusal("EP 800/4 6+0.5"), "bottom cover of 0.5 mm"));
    CHECK(contains(refusal("EP 800/4 60+3"), "top cover of 60 mm"));
    CHECK(contains(refusal("ST 1600 8+2"), "3 to 40 mm"));
    for (double width : {0.0, -1200.0, std::nan("")})
        CHECK_THROWS_AS(belt_from_designation("EP 800/4 6+3", width), std::invalid_argument);
}
