#include "io/case_file.h"

#include "io/input_error.h"
#include "materials/data_sheet.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <string>

namespace swale {
namespace {

const std::string data = std::string(SWALE_SOURCE_DIR) + "/tests/io/data/";

constexpr double degree = 3.14159265358979323846 / 180;  // [rad]

doctest::Approx close(double value) {
    return doctest::Approx(value).epsilon(1e-12);
}

/// The example with one line added at its end.
TransitionCase example_with(const std::string& line) {
    return parse_case(file_text(data + "case.example.toml") + "\n" + line + "\n", "case.toml");
}

}  // namespace

TEST_CASE("the example of a job reads to its numbers in mm and N") {
    const TransitionCase result = read_case(data + "case.example.toml");
    CHECK(result.title == "Salt reclaim R3, tail transition");
    CHECK(result.belt.designation == "EP 800/4 6+3");
    CHECK(result.belt.carcass == Carcass::textile);
    CHECK(result.belt.width == close(1200));
    CHECK(result.belt.rated_tension.value() == close(80));
    REQUIRE(result.states.size() == 3);
    CHECK(result.states[0].name == "running full");
    CHECK(result.states[0].total.value() == close(45000));
    CHECK(result.states[1].total.value() == close(62000));
    CHECK(result.states[2].total.value() == close(18000));
    CHECK(result.layout.pulley.end == BeltEnd::tail);
    CHECK(result.layout.pulley.diameter == close(630));
    CHECK(result.layout.pulley.lift == 0);
    CHECK(result.layout.trough.angle == close(35 * degree));
    CHECK(result.layout.distance == close(2400));
    REQUIRE(result.layout.stations.size() == 1);
    CHECK(result.layout.stations[0].at == close(1200));
    CHECK(result.layout.stations[0].angle == close(20 * degree));
    CHECK_FALSE(result.layout.stations[0].lift.has_value());
}

TEST_CASE("a load is read in t and mm and borne by every state that does not say otherwise") {
    const TransitionCase result = example_with("[load]\ndensity = \"1200 kg/m^3\"\nsurcharge = \"20 deg\"");
    REQUIRE(result.bulk.has_value());
    CHECK(result.bulk->density == close(1.2e-9));
    CHECK(result.bulk->surcharge == close(20 * degree));
    CHECK(result.bulk->fill == 1);
    CHECK_FALSE(result.bulk->free_edge.has_value());
    CHECK_FALSE(result.bulk->from.has_value());
    for (const TensionState& state : result.states) CHECK(state.loaded);
}

TEST_CASE("a state that is not loaded bears no load and without a load none does") {
    std::string text = file_text(data + "case.example.toml") + "\n[load]\ndensity = \"75 lb/ft^3\"\nsurcharge = \"20 deg\"\n";
    text.replace(text.find("total = \"18 kN\""), 15, "total = \"18 kN\"\nloaded = false");
    const TransitionCase result = parse_case(text, "case.toml");
    CHECK(result.bulk->density == close(75 * 0.45359237e-3 / (1728 * 25.4 * 25.4 * 25.4)));
    CHECK(result.states[0].loaded);
    CHECK_FALSE(result.states[2].loaded);
    for (const TensionState& state : read_case(data + "case.example.toml").states) CHECK_FALSE(state.loaded);
}

TEST_CASE("what the example leaves out has its default") {
    const TransitionCase result = read_case(data + "case.example.toml");
    const Trough& trough = result.layout.trough;
    CHECK(trough.centre_roll == 465);
    CHECK(trough.wing_roll == 465);
    CHECK(trough.roll_gap == 10);
    CHECK(trough.roll_end_radius == 5);
    CHECK(trough.roll_diameter == 152.4);
    CHECK(trough.spacing == 1200);
    CHECK_FALSE(trough.sets.has_value());
    CHECK(trough.support == Support::rolls);
    CHECK(result.layout.pulley.grip == Grip::stuck);
    CHECK(result.settings.accuracy == 0.02);
    CHECK(result.settings.model == Symmetry::half);
    CHECK(result.settings.grid == 1);
}

TEST_CASE("default limits follow the carcass and carry their source") {
    const Limits limits = read_case(data + "case.example.toml").limits;
    CHECK(limits.edge_tension->value == 1.15);
    CHECK(limits.tension_min->value == 0);
    CHECK(limits.edge_strain->value == 0.008);
    CHECK(limits.edge_strain->advisory);
    CHECK_FALSE(limits.edge_strain->source.empty());
    CHECK_FALSE(limits.junction_strain.has_value());
    CHECK_FALSE(limits.lift_off.has_value());
}

TEST_CASE("a limit that the user sets is judged and no mere advice") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("# edge_strain"), 13, "edge_strain");
    const Limits limits = parse_case(text, "case.toml").limits;
    CHECK(limits.edge_strain->value == close(0.008));
    CHECK_FALSE(limits.edge_strain->advisory);
    CHECK(limits.edge_strain->source == "given in the case file");
}

TEST_CASE("the edge's limit of ISO 5293 is taken by its name, with its source") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("# edge_tension = 1.15"), 21, "edge_tension = \"ISO 5293\"");
    const Limits limits = parse_case(text, "case.toml").limits;
    CHECK(limits.edge_tension->value == 1.30);
    CHECK(limits.edge_tension->source.find("ISO 5293:1981") != std::string::npos);
}

TEST_CASE("a state's own limits take the place of the case's one by one") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("total = \"62 kN\""), 15, "total = \"62 kN\"\nlimits = { edge_tension = 1.5, lift_off = \"5 mm\" }");
    text.replace(text.find("# edge_strain"), 13, "edge_strain");
    const TransitionCase result = parse_case(text, "case.toml");
    const Limits &of_case = result.limits_in(result.states[0]), &starting = result.limits_in(result.states[1]);
    CHECK_FALSE(result.states[0].limits.has_value());
    CHECK(of_case.edge_tension->value == 1.15);
    CHECK_FALSE(of_case.lift_off.has_value());
    CHECK(starting.edge_tension->value == 1.5);
    CHECK(starting.edge_tension->source == "given in the case file");
    CHECK(starting.lift_off->value == close(5));
    CHECK(starting.edge_strain->source == "given in the case file");
    CHECK(starting.tension_min->source == of_case.tension_min->source);
}

TEST_CASE("the held strip reads to its numbers in mm and N") {
    const TransitionCase result = read_case(data + "held.example.toml");
    const Section& section = result.belt.section;
    CHECK(section.membrane(0, 0) == close(8101.27));
    CHECK(section.membrane(1, 1) == close(2531.65));
    CHECK(section.membrane(0, 1) == close(506.33));
    CHECK(section.membrane(2, 2) == close(500));
    CHECK(section.bending(0, 0) == close(67511));
    CHECK(section.bending(1, 1) == close(21097));
    CHECK(section.bending(1, 0) == close(4219.4));
    CHECK(section.bending(2, 2) == close(4166.7));
    CHECK(section.thickness == close(10));
    CHECK(section.underside == close(5));
    CHECK(section.mass == 0);
    CHECK(result.states.front().elongation.value() == close(6));
    CHECK_FALSE(result.states.front().total.has_value());
    CHECK(result.layout.pulley.support == Support::held);
    CHECK(result.layout.trough.support == Support::held);
    CHECK(result.layout.trough.flat_width.value() == close(475));
    CHECK(result.layout.trough.junction_radius == close(150));
    CHECK(result.layout.trough.sets == 1);
    CHECK(result.layout.distance == close(2000));
}

TEST_CASE("a section outright is listed with its origin and judged for strain only if its kind is known") {
    const TransitionCase result = read_case(data + "held.example.toml");
    CHECK_FALSE(result.belt.carcass.has_value());
    CHECK_FALSE(result.limits.edge_strain.has_value());
    CHECK(result.limits.edge_tension.has_value());
    for (const BeltDatum& datum : result.belt.data) {
        CAPTURE(datum.name);
        const bool assumed = datum.name == "foundation" || datum.name == "underside";
        CHECK((datum.origin.grade == "given") == !assumed);
    }
}

TEST_CASE("what was measured overrides the catalogue") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("# modulus"), 9, "modulus");
    text.replace(text.find("# rated_tension"), 15, "rated_tension");
    text.replace(text.find("8000 N/mm"), 9, "9000 N/mm");
    text.replace(text.find("80 N/mm"), 7, "75 N/mm");
    const Belt belt = parse_case(text, "case.toml").belt;
    CHECK(belt.section.membrane(0, 0) == close(9000));
    CHECK(belt.rated_tension.value() == close(75));
}

TEST_CASE("the share of A11 left in compression is read for a designation and for a section and stands on the sheet") {
    for (const char* file : {"case.example.toml", "held.example.toml"}) {
        std::string text = file_text(data + file);
        CHECK(parse_case(text, file).belt.section.compression.linear());
        text.insert(text.find("width ="), "compressive_stiffness = 0.1\n");
        const Belt belt = parse_case(text, file).belt;
        CHECK(belt.section.compression.share == 0.1);
        CHECK(internal_value(belt.data, "compressive_stiffness") == 0.1);
        CHECK(section_of(belt.data).compression.share == 0.1);
    }
}

TEST_CASE("a certificate without a modulus gives the secant of its elongation and one with it only a warning") {
    const auto belt_with = [](const std::string& certificate) {
        std::string text = file_text(data + "case.example.toml");
        text.replace(text.find("# modulus"), 0, certificate + "\n");
        return parse_case(text, "case.toml").belt;
    };
    const Belt stretched = belt_with("elongation_at_reference = \"1.6 %\"");
    CHECK(stretched.section.membrane(0, 0) == close(5000));
    CHECK(stretched.warnings.empty());
    const Belt measured = belt_with("elongation_at_reference = \"1.6 %\"\nmodulus = \"7000 N/mm\"");
    CHECK(measured.section.membrane(0, 0) == close(7000));
    CHECK(measured.warnings.empty());
    CHECK(belt_with("elongation_at_reference = \"1.0 %\"\nmodulus = \"7000 N/mm\"").warnings.size() == 1);
    CHECK(belt_with("mass = \"10 kg/m^2\"\nthickness = \"14 mm\"\nrated_tension = \"800 N/mm\"").warnings.size() == 2);
}

TEST_CASE("roll lengths follow the belt width and are interpolated for belts made to inches") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("1200 mm"), 7, "48 in");
    const Trough trough = parse_case(text, "case.toml").layout.trough;
    CHECK(trough.centre_roll == close(465 + 65 * 19.2 / 200));
    CHECK(trough.wing_roll == trough.centre_roll);
}

TEST_CASE("sets of two and five rolls with tilt and offset read to their numbers in mm and rad") {
    const auto trough_of = [](const std::string& keys) {
        std::string text = file_text(data + "case.example.toml");
        text.replace(text.find("angle = \"35 deg\""), 16, keys);
        return parse_case(text, "case.toml").layout.trough;
    };
    const Trough pair = trough_of("angle = \"20 deg\"\nrolls = 2\nwing_roll = \"700 mm\"\nwing_tilt = \"1.5 deg\"");
    CHECK(pair.rolls == 2);
    CHECK(pair.wing_roll == close(700));
    CHECK(pair.wing_tilt == close(1.5 * degree));
    const Trough five =
        trough_of("angle = \"55 deg\"\nrolls = 5\ninner_angle = \"25 deg\"\ncentre_roll = \"290 mm\"\nwing_roll = \"250 mm\"");
    CHECK(five.rolls == 5);
    CHECK(five.inner_angle == close(25 * degree));
    CHECK(five.inner_roll == close(290));
    CHECK(five.wing_roll == close(250));
    const Trough offset = trough_of("angle = \"35 deg\"\nroll_gap = \"-20 mm\"\ncentre_offset = \"-160 mm\"");
    CHECK(offset.centre_offset == close(-160));
    CHECK(trough_of("angle = \"35 deg\"\nspacing = \"200 mm\"").centre_offset == 0);
    CHECK(offset.roll_gap == close(-20));
}

TEST_CASE("wing rolls that differ from left to right ask for the whole belt") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("angle = \"35 deg\""), 16, "angle = \"35 deg\"\nwing_roll_right = \"400 mm\"");
    CHECK(parse_case(text, "case.toml").settings.model == Symmetry::full);
    try {
        parse_case(text + "\nmodel = \"half\"\n", "case.toml");
        FAIL("half a belt on unequal wings");
    } catch (const InputErrors& errors) {
        REQUIRE(errors.errors().size() == 1);
        CHECK(errors.errors().front().key == "solve.model");
    }
}

TEST_CASE("a limit of lift-off asks for a centre roll") {
    std::string text = file_text(data + "case.example.toml");
    text.replace(text.find("angle = \"35 deg\""), 16, "angle = \"20 deg\"\nrolls = 2\nwing_roll = \"700 mm\"");
    text.replace(text.find("[limits]"), 8, "[limits]\nlift_off = \"5 mm\"");
    try {
        parse_case(text, "case.toml");
        FAIL("lift-off from a roll that is not there");
    } catch (const InputErrors& errors) {
        REQUIRE(errors.errors().size() == 1);
        CHECK(errors.errors().front().key == "limits.lift_off");
    }
}

TEST_CASE("settings of the solution are read") {
    const SolveSettings settings =
        example_with("accuracy = \"1 %\"\nmodel = \"full\"\ngrid = 2\nnewton_iterations = 30").settings;
    CHECK(settings.accuracy == close(0.01));
    CHECK(settings.model == Symmetry::full);
    CHECK(settings.grid == 2);
    CHECK(settings.newton_iterations == 30);
}

TEST_CASE("a case reads the same with a byte order mark and with line ends of two characters") {
    std::string text;
    for (const char c : file_text(data + "held.example.toml")) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
    CHECK(parse_case("\xEF\xBB\xBF" + text, "held.toml").belt.width == 1200);
}

TEST_CASE("a case without a title is called by its file") {
    const std::string text = file_text(data + "held.example.toml");
    CHECK(parse_case(text.substr(text.find("[belt]")), "strips/drawn.toml").title == "drawn");
}

}  // namespace swale
