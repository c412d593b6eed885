#include "io/command_line.h"
#include "io/markup_text.h"
#include "io/wear/field_sheet.h"
#include "io/wear/page_text.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace swale {

namespace {

const std::string cases = std::string(SWALE_SOURCE_DIR) + "/cases/";

struct Run {
    int code;
    std::string out, err;
};

Run run(const std::vector<std::string>& arguments) {
    std::ostringstream out, err;
    const int code = run_command_line(arguments, out, err);
    return {code, out.str(), err.str()};
}

std::string written(const ScratchFolder& scratch, const std::string& text) {
    const std::filesystem::path path = scratch.path() / "survey.toml";
    std::ofstream(path) << text;
    return path.string();
}

const std::string head =
    "title = \"<script>alert('rolls')</script>\"\n[belt]\nwidth = \"1200 mm\"\ndesignation = \"EP 800/4 6+3\"\n[trough]\nangle "
    "= "
    "\"35 deg\"\n[return]\ntension = \"9 kN\"\nspacing = \"3 m\"\nroll_diameter = \"133 mm\"\nroll_length = \"1400 mm\"\n";

}  // namespace

TEST_CASE("the cupped belt of the salt terminal is read from its survey") {
    const ScratchFolder scratch;
    const Run said =
        run({"wear", cases + "return-cupped-c6/c6-return.toml", "--json", "--out", (scratch.path() / "r").string()});
    CHECK(said.code == 0);
    CHECK(said.err.empty());
    const auto answer = nlohmann::json::parse(said.out);
    CHECK(answer["verdict"] == "cupped");
    CHECK(answer["cupping_rise_mm"]["high"] < 0);
    CHECK(answer["rolls"].size() == 3);
    CHECK(answer["rolls_disagree"] == false);
    CHECK(scratch.names("r") == std::vector<std::string>{"survey.toml", "wear.html", "wear.json"});
    CHECK(file_text(scratch.path() / "r" / "wear.json") == said.out);
    CHECK(run({"wear", cases + "return-cupped-c6/c6-return.toml", "--json", "--out", (scratch.path() / "s").string()}).out ==
          said.out);
    CHECK(file_text(scratch.path() / "r" / "wear.html") == file_text(scratch.path() / "s" / "wear.html"));
}

TEST_CASE("one reading gets no diagnosis and a hostile text does nothing on the page") {
    const ScratchFolder scratch;
    const std::string survey =
        written(scratch, head + "[[roll]]\nname = \"</svg><img src=x>\"\ndepth = [ { at = \"0 mm\", depth = \"1 mm\" } ]\n");
    const Run said = run({"wear", survey, "--out", (scratch.path() / "r").string()});
    CHECK(said.code == 0);
    CHECK(said.out.find("CAN'T TELL: 1 readings say something") != std::string::npos);
    CHECK(said.out.find("Lock out the drive") != std::string::npos);
    const std::string page = file_text(scratch.path() / "r" / "wear.html");
    CHECK(page.find("<script>") == std::string::npos);
    CHECK(page.find("<img") == std::string::npos);
    CHECK(page.find("&lt;script&gt;") != std::string::npos);
    CHECK(page.find("Lock out the drive") != std::string::npos);
}

TEST_CASE("contact at the edges alone is cupping and says that creases are left open and what would decide") {
    const ScratchFolder scratch;
    const auto band = [](int from, int to, const std::string& mark) {
        return "\n[[roll.band]]\nfrom = \"" + std::to_string(from) + " mm\"\nto = \"" + std::to_string(to) +
               " mm\"\nmark = \"" + mark + "\"\n";
    };
    std::string survey = head;
    for (const char* name : {"a", "b", "c"}) {
        survey += "[[roll]]\nname = \"" + std::string(name) + "\"\n" + band(-700, -630, "none") + band(-600, -560, "contact");
        for (const int from : {-500, -300, -100, 100, 300}) survey += band(from, from + 200, "none");
        survey += band(560, 600, "contact") + band(630, 700, "none");
    }
    const Run said = run({"wear", written(scratch, survey), "--out", (scratch.path() / "r").string()});
    CHECK(said.code == 0);
    CHECK(said.out.find("CUPPING: cupped, with or without creases") != std::string::npos);
    CHECK(said.out.find("What would decide") != std::string::npos);
    CHECK(said.out.find("it may be creased too") != std::string::npos);
    CHECK(said.out.find("at -0 mm") == std::string::npos);
    CHECK(nlohmann::json::parse(file_text(scratch.path() / "r" / "wear.json"))["verdict"] == "cupped, perhaps creased");
}

TEST_CASE("readings off the roll end the program before anything is written") {
    const ScratchFolder scratch;
    const std::string survey =
        written(scratch, head + "[[roll]]\nname = \"a\"\ndepth = [ { at = \"900 mm\", depth = \"1 mm\" } ]\n");
    const Run said = run({"wear", survey, "--out", (scratch.path() / "r").string()});
    CHECK(said.code == 2);
    CHECK(said.out.empty());
    CHECK(said.err.find("900 mm is off the roll") != std::string::npos);
    CHECK(scratch.names() == std::vector<std::string>{"survey.toml"});
}

TEST_CASE("the field sheet is written alone or with a survey and warns before anything else") {
    const ScratchFolder scratch;
    const std::string sheet = (scratch.path() / "sheet.html").string();
    CHECK(run({"wear", "--field-sheet", sheet}).code == 0);
    const std::string text = file_text(sheet);
    CHECK(text == field_sheet());
    for (const char* word :
         {"lock and tag out", "under tension", "belt clamps", "Nip points", "Never reach to a roll", "licensed"})
        CHECK(text.find(word) != std::string::npos);
    CHECK(text.find("lock and tag out") < text.find("<h2>How</h2>"));
    CHECK(run({"wear"}).code == 2);
}

TEST_CASE("text for a page has no mark that means anything there") {
    CHECK(escaped("a<b>&\"c'") == "a&lt;b&gt;&amp;&quot;c&#39;");
    CHECK(escaped("a\x07").find('\x07') == std::string::npos);
}

}  // namespace swale
