#include "materials/designation.h"

#include "tests/materials/message_of.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

std::string refusal(const std::string& text) {
    return message_of<BadDesignation>([&] { parse_designation(text); });
}

}  // namespace

TEST_CASE("a ply designation gives carcass and covers") {
    const Designation belt = parse_designation("EP 800/4 6+3");
    CHECK(belt.carcass == CarcassCode{"EP", 800, 4});
    CHECK(belt.top_cover == 6);
    CHECK(belt.bottom_cover == 3);
}

TEST_CASE("a steel-cord designation has no plies") {
    const Designation belt = parse_designation("ST 1600 8+6");
    CHECK(belt.carcass == CarcassCode{"ST", 1600, std::nullopt});
    CHECK(belt.top_cover == 8);
    CHECK(belt.bottom_cover == 6);
}

TEST_CASE("a designation in print parses to itself") {
    for (const char* text : {"EP 800/4 6+3", "ST 1600 8+6", "EP 630/2 5+1.5", "ST 5400 12.75+8.25"})
        CHECK(to_string(parse_designation(text)) == text);
}

TEST_CASE("case and spacing do not matter") {
    const Designation belt = parse_designation("EP 630/2 5+1.5");
    for (const char* text : {"ep630/2 5+1.5", "Ep 630 / 2  5 + 1.5", "  EP\t630/2 5.0+1.50 "})
        CHECK(parse_designation(text) == belt);
    CHECK(parse_designation("St1600 8 +6") == parse_designation("ST 1600 8+6"));
}

TEST_CASE("common spellings are read as the same belt") {
    const Designation belt = parse_designation("EP 800/4 6.5+3");
    for (const char* text : {"EP800/4 6,5+3", "EP-800/4 6.5 + 3", "ep - 800 / 4 6,5 + 3,0"})
        CHECK(parse_designation(text) == belt);
    CHECK(parse_designation("St-1600 8+6") == parse_designation("ST 1600 8+6"));
    for (const char* text : {"PVG 1000S 3+3", "pvg 1000 s 3+3", "PVG1000/1 3+3"})
        CHECK(parse_designation(text).carcass == CarcassCode{"PVG", 1000, 1});
}

TEST_CASE("covers joined by a stroke are no covers") {
    for (const char* text : {"EP 800/4 6/3", "ST 1600 8/6", "EP 800/4 1/4+1/8 in"})
        CHECK_MESSAGE(contains(refusal(text), "'/' counts plies; covers, in mm, are joined by '+'"), text);
    CHECK(contains(refusal("EP 800/4 6+3 Y"), "a cover grade neither"));
}

TEST_CASE("plies times the strength of one are refused with the strength of the whole") {
    for (const char* text : {"EP 4x200 6+3", "EP 200x4 6+3", "EP 4 X 200", "EP 200*4 6+3", "EP 4 \u00D7 200 6+3"})
        CHECK_MESSAGE(contains(refusal(text), "whole carcass: 'EP 800/4'"), text);
}

TEST_CASE("a refusal names the part that is wrong and the form that is allowed") {
    CHECK(contains(refusal("EP 800/4 6"), "bottom cover is missing"));
    CHECK(contains(refusal("EP 800/4 6+"), "bottom cover in mm after '+' is missing"));
    CHECK(contains(refusal("EP 800/4"), "top cover in mm is missing"));
    CHECK(contains(refusal("EP 800/ 6+3"), "bottom cover is missing") == false);
    CHECK(contains(refusal("EP /4 6+3"), "breaking strength in N/mm is missing at '/4 6+3'"));
    CHECK(contains(refusal("800/4 6+3"), "carcass code"));
    CHECK(contains(refusal("EP 800/x 6+3"), "number of plies after '/' is missing at 'x 6+3'"));
    CHECK(contains(refusal("EP 800/4 6+3 mm"), "nothing may follow the covers at 'mm'"));
    CHECK(contains(refusal("EP 800/46+3"), "blank must stand between carcass and covers"));
    for (const char* text : {"", "EP", "EP 800/4 6+3+1", "EP 800.5/4 6+3", "EP 800/4 -6+3", "EP 800/4 nan+3", "EP 800/4 6/3",
                             "EP 99999999999/4 6+3", "EP 800/4 6+1e999", "EP 800/4 6,+3", "EP 800/4 6.+3", "EP -- 800/4 6+3"})
        CHECK_MESSAGE(contains(refusal(text), "'EP 800/4 6+3' or 'ST 1600 8+6'"), text);
}
