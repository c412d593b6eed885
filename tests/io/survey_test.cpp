#include "io/case_file.h"
#include "mesh/idler_set.h"
#include "tests/io/bad_case.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

namespace swale {

namespace {

/// A station, a raised pulley; the survey begins on line 18.
const std::string surveyed_case = R"([belt]
width = "1000 mm"
designation = "EP 630/4 5+2"
[[tension]]
name = "running full"
total = "40 kN"
[pulley]
end = "tail"
diameter = "500 mm"
lift = "20 mm"
[trough]
angle = "30 deg"
[transition]
distance = "2000 mm"
[[transition.idlers]]
at = "1000 mm"
angle = "15 deg"
[survey]
measured_to = "shell"
pulley_top = "1150 mm"
[[survey.set]]
name = "set 1"
at = "2010 mm"
left_wing = { left = { y = "520 mm", z = "1320 mm" }, right = { y = "190 mm", z = "1130 mm" } }
centre = { left = { x = "2012 mm", y = "181 mm", z = "1128 mm" }, right = { y = "-199 mm", z = "1126 mm" } }
right_wing = { left = { y = "-208 mm", z = "1128 mm" }, right = { y = "-538 mm", z = "1317 mm" } }
)";

/// All rolls in the plane of their set, wherever that stands.
std::string in_one_plane(const std::string& text) {
    return with_line(text, 25,
                     "centre = { left = { y = \"181 mm\", z = \"1128 mm\" }, right = { y = \"-199 mm\", z = \"1126 mm\" } }");
}

TransitionLayout read(const std::string& text) {
    return parse_case(text, "case.toml").layout;
}

std::string end_of(const Eigen::Vector3d& p) {
    const auto length = [](double value) { return " = \"" + std::to_string(value) + " mm\""; };
    return "{ x" + length(p.x()) + ", y" + length(p.y()) + ", z" + length(p.z() + 1127) + " }";
}

/// The axis of a roll of the case above, in its survey's datum.
std::string to_axis(const std::string& key, const Roll& roll) {
    const Eigen::Vector3d half = (roll.axis.y() < 0 ? -1 : 1) * roll.half_length * roll.axis;
    return key + " = { left = " + end_of(roll.centre + half) + ", right = " + end_of(roll.centre - half) + " }";
}

/// A survey of the case above with another line, and the mistake that has to be found in it.
const std::vector<BadCase> bad_surveys = {
    {19, "", 18, "survey.measured_to", "missing"},
    {19, "measured_to = \"bearing\"", 19, "survey.measured_to", "\"shell\" or \"axis\""},
    {20, "pulley_top = \"1150\"", 20, "survey.pulley_top", "no unit"},
    {20, "pulley_top = \"11.5 m\"", 20, "survey.pulley_top", "10373.0 mm above the full sets"},
    {20, "pulley_height = \"1150 mm\"", 20, "survey.pulley_height", "unknown key"},
    {22, "name = \"set one\"", 22, "survey.set[1].name", "station 1, set 1, set 2"},
    {23, "at = \"2010 kN\"", 23, "survey.set[1].at", "mm"},
    {24, "left_wing = { left = { y = \"520 mm\", z = \"1320 mm\" } }", 24, "survey.set[1].left_wing.right", "missing"},
    {24, "", 21, "survey.set[1].left_wing", "missing"},
    {24, "left_wing = { left = { y = \"520 mm\" }, right = { y = \"190 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing.left.z", "missing"},
    {24, "left_wing = { right = { y = \"520 mm\", z = \"1320 mm\" }, left = { y = \"190 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing", "its left end is not to the left"},
    {24, "left_wing = { left = { y = \"500 mm\", z = \"1320 mm\" }, right = { y = \"190 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing", "363.6 mm apart, the roll is 380.0 mm long"},
    {24, "left_wing = { left = { y = \"450 mm\", z = \"1408 mm\" }, right = { y = \"190 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing", "drawn at 30.0 deg"},
    {24, "left_wing = { left = { y = \"640 mm\", z = \"1320 mm\" }, right = { y = \"310 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing", "from the conveyor's centre line"},
    {24, "left_wing = { left = { y = \"501 mm\", z = \"1320 mm\" }, right = { y = \"171 mm\", z = \"1130 mm\" } }", 24,
     "survey.set[1].left_wing", "overlaps centre, whose left end is at 181.0 mm"},
    {25, "left_inner = { left = { y = \"520 mm\", z = \"1320 mm\" }, right = { y = \"190 mm\", z = \"1130 mm\" } }", 21,
     "survey.set[1].centre", "missing"},
    {26,
     "right_wing = { left = { y = \"-208 mm\", z = \"1128 mm\" }, right = { y = \"-538 mm\", z = \"1317 mm\" } "
     "}\n[[survey.set]]\n"
     "name = \"set 1\"\n"
     "left_wing = { left = { y = \"520 mm\", z = \"1320 mm\" }, right = { y = \"190 mm\", z = \"1130 mm\" } }\n"
     "centre = { left = { y = \"181 mm\", z = \"1128 mm\" }, right = { y = \"-199 mm\", z = \"1126 mm\" } }\n"
     "right_wing = { left = { y = \"-208 mm\", z = \"1128 mm\" }, right = { y = \"-538 mm\", z = \"1317 mm\" } }",
     28, "survey.set[2].name", "measured twice"},
};

}  // namespace

TEST_CASE("a survey takes the place of the drawn set and pulley height and keeps the drawing beside it") {
    const TransitionCase transition = parse_case(surveyed_case, "case.toml");
    const TransitionLayout& layout = transition.layout;
    CHECK(layout.distance == 2010);
    CHECK(layout.pulley.lift == doctest::Approx(1150 - 1127));
    CHECK(layout.stations[0].at == 1000);
    CHECK(layout.lift_of(layout.stations[0]) == doctest::Approx(10));  // as drawn, half way to a pulley 20 mm up
    CHECK(transition.settings.model == Symmetry::full);
    REQUIRE(transition.drawn);
    CHECK(transition.drawn->distance == 2000);
    CHECK(transition.drawn->pulley.lift == 20);
    const IdlerSet set = idler_sets(layout, 1).back();
    CHECK(set.lift == 0);  // without a level the last full set measured is the level
    CHECK(set.angle == doctest::Approx((std::atan2(190, 330) + std::atan2(189, 330)) / 2));
    const Roll centre = rolls_of(layout, set, 0)[0].roll;
    CHECK(centre.half_length == 190);
    CHECK((centre.centre + centre.radius * centre.up - Eigen::Vector3d(2011, -9, 0)).norm() < 1e-9);
}

TEST_CASE("a level puts measured sets above or below those that are not measured") {
    const TransitionLayout layout = read(with_line(surveyed_case, 20, "pulley_top = \"1150 mm\"\nlevel = \"1120 mm\""));
    CHECK(layout.pulley.lift == doctest::Approx(30));
    CHECK(idler_sets(layout, 2)[1].lift == doctest::Approx(7));
    CHECK(idler_sets(layout, 2)[2].lift == 0);
    CHECK(idler_sets(layout, 2)[2].x == 3210);
}

TEST_CASE("a survey to the axes finds the same rolls as one to the shells") {
    const TransitionLayout shell = read(surveyed_case);
    const std::vector<SetRoll> one = rolls_of(shell, idler_sets(shell, 1).back(), 0);
    std::string text = with_line(surveyed_case, 19, "measured_to = \"axis\"");
    text = with_line(text, 20, "pulley_top = \"1150 mm\"");
    text = with_line(text, 24, to_axis("left_wing", one[1].roll));
    text = with_line(text, 25, to_axis("centre", one[0].roll));
    text = with_line(text, 26, to_axis("right_wing", one[2].roll));
    const TransitionLayout axis = read(text);
    const std::vector<SetRoll> other = rolls_of(axis, idler_sets(axis, 1).back(), 0);
    CHECK(axis.pulley.lift == doctest::Approx(shell.pulley.lift));
    for (std::size_t k = 0; k < one.size(); ++k) {
        CHECK((other[k].roll.axis - one[k].roll.axis).norm() < 1e-7);
        CHECK((other[k].roll.centre - one[k].roll.centre).norm() < 1e-4);  // written with six decimals
    }
}

TEST_CASE("a station is measured by its name and then has its own place and angle and height") {
    const std::string station = R"(level = "1120 mm"
[[survey.set]]
name = "station 1"
at = "985 mm"
left_wing = { left = { y = "565 mm", z = "1230 mm" }, right = { y = "200 mm", z = "1132 mm" } }
centre = { left = { y = "190 mm", z = "1131 mm" }, right = { y = "-190 mm", z = "1131 mm" } }
right_wing = { left = { y = "-200 mm", z = "1132 mm" }, right = { y = "-565 mm", z = "1230 mm" } })";
    const TransitionLayout layout = read(with_line(surveyed_case, 20, station));
    CHECK(layout.stations[0].at == 985);
    CHECK(layout.stations[0].lift == doctest::Approx(11));
    CHECK(layout.stations[0].angle == doctest::Approx(std::atan2(98, 365)));
    CHECK(layout.pulley.lift == 20);  // not measured, as drawn
}

TEST_CASE("a survey of stations alone needs a level") {
    std::string text = with_line(in_one_plane(surveyed_case), 22, "name = \"station 1\"");
    text = with_line(text, 12, "angle = \"35 deg\"");
    text = with_line(text, 17, "angle = \"30 deg\"");
    text = with_line(text, 23, "");
    const std::vector<InputError> mistakes = mistakes_of(text);
    REQUIRE(mistakes.size() == 1);
    CHECK(mistakes[0].key == "survey.level");
}

TEST_CASE("each mistake of a survey is named with line and key and what is allowed") {
    for (const BadCase& bad : bad_surveys) check_named(surveyed_case, bad);
}

TEST_CASE("measured sets stand in order and clear of each other and heights are from one datum") {
    const auto first_of = [](const std::string& text) {
        const std::vector<InputError> mistakes = mistakes_of(text);
        return mistakes.empty() ? std::string() : mistakes.front().text();
    };
    CHECK(first_of(with_line(in_one_plane(surveyed_case), 23, "at = \"1100 mm\""))
              .find("set 1 at 1100.0 mm is not clear of station 1") != std::string::npos);
    CHECK(first_of(with_line(surveyed_case, 20, "pulley_top = \"1150 mm\"\nlevel = \"112 mm\"")).find("one datum") !=
          std::string::npos);
    const std::string one_set = with_line(surveyed_case, 12, "angle = \"30 deg\"\nsets = 1");
    CHECK(first_of(one_set).find("trough.sets = 2 or more") != std::string::npos);
}

}  // namespace swale
