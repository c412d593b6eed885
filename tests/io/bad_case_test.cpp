#include "tests/io/bad_case.h"
#include "io/case_file.h"

#include <doctest/doctest.h>

namespace swale {
namespace {

void check_bad_case(const std::string& sound, const BadCase& bad) {
    const std::vector<InputError> mistakes = check_named(sound, bad);
    const std::string text = mistakes.front().text();
    CAPTURE(text);
    CHECK(text.starts_with("case.toml:" + std::to_string(bad.line_of_mistake) + ": "));
    CHECK(text.find('\n') == std::string::npos);
    CAPTURE(mistakes.back().text());
    CHECK(mistakes.size() == 1);
}

}  // namespace

TEST_CASE("the sound cases that the bad ones are made from are read") {
    CHECK(mistakes_of(sound_case).empty());
    CHECK(mistakes_of(sound_held_case).empty());
    CHECK(mistakes_of(with_line(sound_held_case, 23, "angle = \"0 deg\"")).empty());
}

TEST_CASE("each mistake is named with line and key and what is allowed and brings no second message") {
    for (const BadCase& bad : bad_cases) check_bad_case(sound_case, bad);
}

TEST_CASE("each mistake in a held strip is named with line and key and what is allowed") {
    for (const BadCase& bad : bad_held_cases) check_bad_case(sound_held_case, bad);
}

TEST_CASE("all mistakes of one file are reported together in the order of its lines") {
    std::string text = sound_case;
    text = with_line(text, 25, "accurracy = \"2 %\"");
    text = with_line(text, 20, "at = \"2500 mm\"");
    text = with_line(text, 16, "angle = \"35 %\"");
    text = with_line(text, 13, "");
    text = with_line(text, 4, "designation = \"EP\"");
    text = with_line(text, 3, "width = 1200");
    const std::vector<InputError> mistakes = mistakes_of(text);
    REQUIRE(mistakes.size() == 6);
    CHECK(mistakes[0].key == "belt.width");
    CHECK(mistakes[1].key == "belt.designation");
    CHECK(mistakes[2].key == "pulley.diameter");
    CHECK(mistakes[3].key == "trough.angle");
    CHECK(mistakes[4].key == "transition.idlers[1].at");
    CHECK(mistakes[5].key == "solve.accurracy");
    for (std::size_t i = 1; i < mistakes.size(); ++i) CHECK(mistakes[i - 1].line <= mistakes[i].line);
}

TEST_CASE("a message holds file and line and key and the value given and what is allowed") {
    const std::vector<InputError> mistakes = mistakes_of(with_line(sound_case, 3, "width = 1200"));
    REQUIRE(mistakes.size() == 1);
    CHECK(mistakes.front().text() ==
          "case.toml:3: belt.width: a bare number where a quantity with its unit belongs; given 1200; allowed: a length from "
          "100 mm to 5000 mm, written like \"1200 mm\"");
}

TEST_CASE("a case that is only a comment lacks every table") {
    std::vector<std::string> keys;
    for (const InputError& mistake : mistakes_of("# nothing yet\n")) keys.push_back(mistake.key);
    CHECK(keys == std::vector<std::string>{"belt", "pulley", "trough", "transition", "tension"});
}

TEST_CASE("a table in the place of an array of tables is refused and so is an array in the place of a table") {
    CHECK(mistakes_of(with_line(with_line(sound_case, 5, "[tension]"), 8, "[more]")).front().key == "tension");
    CHECK(mistakes_of(with_line(sound_case, 11, "[[pulley]]")).front().key == "pulley");
    CHECK(mistakes_of(with_line(sound_held_case, 3, "section = 5")).front().key == "belt.section");
    CHECK(mistakes_of("belt = 3\n").front().text() == "case.toml:1: belt: wrong type; given 3; allowed: a table [belt]");
}

TEST_CASE("a mistake is reported once however often its key is read") {
    CHECK(mistakes_of("[belt]\nwidth = \"1200 mm\"\nsection = 5\n").size() == 5);
    CHECK(mistakes_of("belt = 3\n").size() == 5);
}

TEST_CASE("neither a deep key nor a crowd of tables exhausts the program") {
    std::string deep;
    for (int level = 0; level < 100000; ++level) deep += "a.";
    CHECK(mistakes_of(deep + "a = 1\n").front().text() ==
          "case.toml:1: this is not TOML: a line is longer than 2000 bytes; allowed: TOML 1.0");
    CHECK(mistakes_of(deep.substr(0, 1900) + "a = 1\n").back().problem == "unknown key");
    CHECK(mistakes_of("[" + deep.substr(0, 1900) + "a]\n" + deep.substr(0, 1900) + "a = 1\n").back().problem == "unknown key");
    CHECK_FALSE(mistakes_of("a = " + std::string(1900, '[') + "\n").empty());
    std::string crowd = sound_case;
    for (int state = 0; state < 20000; ++state) crowd += "[[tension]]\n";
    CHECK(mistakes_of(crowd).front().problem == "too many tables");
}

TEST_CASE("no prefix of a case file and no single odd byte in it brings more than messages") {
    for (std::size_t length = 0; length < sound_held_case.size(); ++length)
        CHECK_NOTHROW(mistakes_of(sound_held_case.substr(0, length)));
    for (std::size_t at = 0; at < sound_case.size(); ++at)
        for (const char odd : {'"', '[', '\n', '=', '\x01', '9', '.'}) {
            std::string text = sound_case;
            text[at] = odd;
            CHECK_NOTHROW(mistakes_of(text));
        }
}

}  // namespace swale
