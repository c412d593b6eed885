#include "io/size_table.h"

#include "io/case_file.h"
#include "io/text_file.h"
#include "io/tolerances_table.h"
#include "tests/io/bad_case.h"

#include <doctest/doctest.h>

#include <numbers>
#include <string>

namespace swale {

namespace {

const std::string example = read_text_file(std::string(SWALE_SOURCE_DIR) + "/tests/io/data/case.example.toml");

SizingBounds bounds_with(const std::string& table) {
    const std::string text = example + "\n" + table;
    return sizing_bounds(text, "case.toml", parse_case(text, "case.toml"));
}

InputError first_mistake(const std::string& table) {
    try {
        bounds_with(table);
    } catch (const InputErrors& errors) {
        return errors.errors().front();
    }
    FAIL("no mistake in " << table);
    return {};
}

}  // namespace

TEST_CASE("what is not said of the sizing follows from belt and trough") {
    const SizingBounds bounds = bounds_with("");
    const TransitionCase transition = parse_case(example, "case.toml");
    CHECK(bounds.aim == SizingAim::distance);
    CHECK(bounds.shortest == transition.belt.width / 2);
    CHECK(bounds.longest == 12 * transition.belt.width);
    CHECK(bounds.highest_lift == doctest::Approx(transition.layout.trough_depth() / 2));
    CHECK(bounds.angles.empty());
}

TEST_CASE("what is said of the sizing is taken") {
    const SizingBounds bounds = bounds_with(
        "[size]\nfind = \"all\"\nshortest = \"1 m\"\nlongest = \"4 m\"\nhighest_lift = \"4 in\"\nmost_idlers = 1\n"
        "angles = [\"10 deg\", \"20 deg\"]\n");
    CHECK(bounds.aim == SizingAim::all);
    CHECK(bounds.shortest == 1000);
    CHECK(bounds.longest == 4000);
    CHECK(bounds.highest_lift == doctest::Approx(101.6));
    CHECK(bounds.most_idlers == 1);
    REQUIRE(bounds.angles.size() == 2);
    CHECK(bounds.angles[1] == doctest::Approx(20 * std::numbers::pi / 180));
}

TEST_CASE("a sizing that can't be is refused with its key and what is allowed") {
    CHECK(first_mistake("[size]\nfind = \"lifts\"\n").key == "size.find");
    CHECK(first_mistake("[size]\nshortest = \"5 m\"\nlongest = \"4 m\"\n").key == "size.longest");
    CHECK(first_mistake("[size]\nlowest_lift = \"400 mm\"\nhighest_lift = \"300 mm\"\n").key == "size.highest_lift");
    CHECK(first_mistake("[size]\nangles = [\"50 deg\"]\n").key == "size.angles");
    CHECK(first_mistake("[size]\nangles = [\"0 deg\"]\n").key == "size.angles");
    CHECK(first_mistake("[size]\nangles = []\n").key == "size.angles");
    CHECK(first_mistake("[size]\nangles = [10]\n").allowed.find("list of angles") != std::string::npos);
    CHECK(first_mistake("[size]\nangles = \"10 deg\"\n").key == "size.angles");
    CHECK(first_mistake("[size]\nmost_idlers = 9\n").key == "size.most_idlers");
}

TEST_CASE("tolerances are read, and a case without any is refused where they are asked for") {
    const std::string table = "\n[tolerances]\ntension = \"10 %\"\nidler_angle = \"1 deg\"\nexceed = \"1 %\"\n";
    const Tolerances tolerances = tolerances_of(example + table, "case.toml");
    CHECK(tolerances.tension == doctest::Approx(0.1));
    CHECK(tolerances.idler_angle == doctest::Approx(std::numbers::pi / 180));
    CHECK(tolerances.exceed == doctest::Approx(0.01));
    CHECK(tolerances.any());
    CHECK_THROWS_AS(tolerances_of(example, "case.toml"), InputErrors);
    CHECK_THROWS_AS(tolerances_of(example + "\n[tolerances]\n", "case.toml"), InputErrors);
    CHECK_THROWS_AS(tolerances_of(example + "\n[tolerances]\ntension = \"-3 %\"\n", "case.toml"), InputErrors);
}

}  // namespace swale
