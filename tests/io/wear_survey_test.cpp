#include "io/wear_survey.h"

#include "io/input_error.h"
#include "io/wear/readings_csv.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace swale {

namespace {

const std::string sound =
    "title = \"rolls\"\n"                                     // 1
    "[belt]\n"                                                // 2
    "width = \"1200 mm\"\n"                                   // 3
    "designation = \"EP 800/4 6+3\"\n"                        // 4
    "[trough]\n"                                              // 5
    "angle = \"35 deg\"\n"                                    // 6
    "[return]\n"                                              // 7
    "tension = \"9 kN\"\n"                                    // 8
    "spacing = \"3 m\"\n"                                     // 9
    "roll_diameter = \"133 mm\"\n"                            // 10
    "roll_length = \"1400 mm\"\n"                             // 11
    "side_down = \"pulley\"\n"                                // 12
    "[[roll]]\n"                                              // 13
    "name = \"r1\"\n"                                         // 14
    "depth = [ { at = \"-100 mm\", depth = \"0.3 mm\" } ]\n"  // 15
    "[[roll.band]]\n"                                         // 16
    "from = \"0 mm\"\n"                                       // 17
    "to = \"4 in\"\n"                                         // 18
    "mark = \"contact\"\n";                                   // 19

struct BadSurvey {
    const char *from, *to;  ///< a text of the sound survey and what takes its place
    int line;
    const char *key, *phrase;
};

std::string replaced(const std::string& text, const std::string& from, const std::string& to) {
    const auto place = text.find(from);
    REQUIRE(place != std::string::npos);
    return text.substr(0, place) + to + text.substr(place + from.size());
}

std::string first_mistake(const std::string& text) {
    try {
        parse_wear_survey(text, "survey.toml");
    } catch (const InputErrors& errors) {
        return errors.errors().front().text();
    }
    return "none";
}

std::string csv_mistake(const std::string& text) {
    try {
        read_readings_csv(text, "r.csv", 700);
    } catch (const InputErrors& errors) {
        return errors.errors().front().text();
    }
    return "none";
}

}  // namespace

TEST_CASE("a survey is read with its units") {
    const WearSurveyFile file = parse_wear_survey(sound, "survey.toml");
    const WearSurvey& survey = file.survey;
    CHECK(file.title == "rolls");
    CHECK(survey.run.tension == 9000);
    CHECK(survey.run.spacing == 3000);
    CHECK(survey.run.junction == 237.5);  // half of the series' 465 mm and the usual gap
    CHECK_FALSE(survey.carrying_side_down);
    REQUIRE(survey.rolls.size() == 1);
    CHECK(survey.rolls[0].depths[0].depth == 0.3);
    CHECK(survey.rolls[0].bands[0].to == doctest::Approx(101.6));
    CHECK(survey.rolls[0].bands[0].mark == Mark::contact);
    CHECK(survey.stiffness_low < 0.7);  // the catalogue's own range
    CHECK(survey.stiffness_high > 1.5);
}

TEST_CASE("each mistake in a survey is named with line and key and what is allowed") {
    const std::vector<BadSurvey> bad{
        {"\"-100 mm\"", "-100", 15, "roll[1].depth[1].at", "bare number"},
        {"\"-100 mm\"", "\"-100\"", 15, "roll[1].depth[1].at", "unit"},
        {"\"0.3 mm\"", "\"-0.3 mm\"", 15, "roll[1].depth[1].depth", "out of range"},
        {"\"-100 mm\"", "\"-701 mm\"", 15, "roll[1].depth[1].at", "-701 mm is off the roll"},
        {"\"0 mm\"", "\"5 in\"", 18, "roll[1].band[1].to", "has no length"},
        {"\"contact\"", "\"worn\"", 19, "roll[1].band[1].mark", "unknown"},
        {"mark = \"contact\"\n", "", 16, "roll[1].band[1].mark", "missing"},
        {"\"1400 mm\"", "\"1100 mm\"", 11, "return.roll_length", "shorter than the belt"},
        {"tension = \"9 kN\"\n", "", 7, "return.tension", "missing"},
        {"\"9 kN\"", "\"9 mm\"", 8, "return.tension", "force"},
        {"side_down", "side_donw", 12, "return.side_donw", "did you mean side_down"},
        {"name = \"r1\"\n", "", 13, "roll[1].name", "missing"},
        {"title = \"rolls\"\n", "readings = \"none.csv\"\n", 1, "readings", "there is no file"},
        {"[return]\n", "[transition]\ncase = \"none.toml\"\n[return]\n", 8, "transition.case", "there is no file"},
    };
    for (const BadSurvey& survey : bad) {
        const std::string text = first_mistake(replaced(sound, survey.from, survey.to));
        CAPTURE(text);
        CHECK(text.starts_with("survey.toml:" + std::to_string(survey.line) + ": " + survey.key + ": "));
        CHECK(text.find(survey.phrase) != std::string::npos);
        CHECK(text.find("; allowed: ") != std::string::npos);
    }
}

TEST_CASE("bands that contradict each other are a mistake and bands that are unsure are none") {
    const std::string other = "[[roll.band]]\nfrom = \"50 mm\"\nto = \"90 mm\"\nmark = ";
    CHECK(first_mistake(sound + other + "\"none\"\n").find("contradict each other") != std::string::npos);
    CHECK(first_mistake(sound + other + "\"unsure\"\n") == "none");
    CHECK(first_mistake(sound + other + "\"contact\"\n") == "none");
}

TEST_CASE("a survey without rolls or with a roll that says nothing is a mistake") {
    const std::string head = sound.substr(0, sound.find("[[roll]]"));
    CHECK(first_mistake(head).find("missing") != std::string::npos);
    CHECK(first_mistake(head + "[[roll]]\nname = \"r\"\n").find("nothing was read on it") != std::string::npos);
}

TEST_CASE("readings come from a CSV by rolls with the units of its header") {
    const std::vector<SurveyedRoll> depths =
        read_readings_csv("# by gauge\nroll,at [cm],depth [mm]\na,-10,0.2\n\nb,1,0.3\r\na,2.5,0\n", "r.csv", 700);
    REQUIRE(depths.size() == 2);
    CHECK(depths[0].name == "a");
    CHECK(depths[0].depths.size() == 2);
    CHECK(depths[0].depths[1].y == 25);
    CHECK(depths[1].depths[0].depth == 0.3);
    const std::vector<SurveyedRoll> bands = read_readings_csv("roll,from [mm],to [mm],mark\na,0,10,unsure\n", "r.csv", 700);
    CHECK(read_readings_csv("\xEF\xBB\xBFroll,at [mm],depth [mm]\na,1,1\n", "r.csv", 700).size() == 1);  // of a spreadsheet
    CHECK(bands[0].bands[0].mark == Mark::unsure);
}

TEST_CASE("each mistake in a CSV is named with its line") {
    const std::vector<std::pair<std::string, std::string>> bad{
        {"", "r.csv: no line names the columns"},
        {"roll,at,depth [mm]\na,1,2\n", "r.csv:1: at: a column of lengths without its unit"},
        {"roll,at [s],depth [mm]\n", "r.csv:1: at: no unit of length"},
        {"roll,place [mm],depth [mm]\n", "r.csv:1: unknown columns"},
        {"roll,at [mm],depth [mm]\na,1\n", "r.csv:2: as many cells as columns"},
        {"roll,at [mm],depth [mm]\na,1,2,3\n", "r.csv:2: as many cells as columns"},
        {"roll,at [mm],depth [mm]\na,one,2\n", "r.csv:2: at: "},
        {"roll,at [mm],depth [mm]\na,nan,2\n", "r.csv:2: at: "},
        {"roll,at [mm],depth [mm]\n,1,2\n", "r.csv:2: roll: the roll has no name"},
        {"roll,from [mm],to [mm],mark\na,1,2,bright\n", "r.csv:2: mark: unknown mark"},
        {"roll,from [mm],to [mm],mark\na,2,1,none\n", "r.csv:2: to: the band has no length; given 1"},
        {"roll,at [mm],depth [mm]\na,900,1\n", "r.csv:2: at: 900 mm is off the roll; given 900"},
        {"roll,at [mm],depth [mm]\na,1,-1\n", "r.csv:2: depth: not a depth of wear; given -1"},
        {"roll,at [mm],depth [mm]\n", "r.csv:1: no reading under the names of the columns"},
    };
    for (const auto& [text, message] : bad) {
        const std::string mistake = csv_mistake(text);
        CAPTURE(mistake);
        CHECK(mistake.starts_with(message));
        CHECK(mistake.find("; allowed: ") != std::string::npos);
    }
}

}  // namespace swale
