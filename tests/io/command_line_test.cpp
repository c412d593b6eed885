#include "io/command_line.h"
#include "io/result_folder.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

namespace swale {
namespace {

struct Run {
    int code = 0;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = run_command_line(arguments, out, err);
    return {code, out.str(), err.str()};
}

const std::string data = std::string(SWALE_SOURCE_DIR) + "/tests/io/data/";

bool holds(const std::string& text, const std::string& phrase) {
    return text.find(phrase) != std::string::npos;
}

}  // namespace

TEST_CASE("version and help are answers") {
    CHECK(run({"--version"}).code == 0);
    CHECK(run({"--version"}).out.starts_with("swale "));
    for (const std::vector<std::string>& asked :
         {std::vector<std::string>{"--help"}, {"solve", "--help"}, {"belts", "--help"}}) {
        const Run help = run(asked);
        CHECK(help.code == 0);
        CHECK(help.err.empty());
        CHECK(holds(help.out, "Usage"));
    }
}

TEST_CASE("help names the commands that work and no other") {
    const std::string help = run({"--help"}).out;
    CHECK(holds(help, "solve"));
    CHECK(holds(help, "screen"));
    CHECK(holds(help, "size"));
    CHECK(holds(help, "belts"));
    CHECK(holds(help, "report"));
    CHECK(holds(help, "wear"));
    CHECK(holds(help, "spread"));
    CHECK_FALSE(holds(help, "verify"));
}

TEST_CASE("a wrong command line is refused with exit code 2 and a message on standard error alone") {
    const std::vector<std::vector<std::string>> wrong = {{},
                                                         {"worn", "case.toml"},
                                                         {"Solve", "case.toml"},
                                                         {"solve"},
                                                         {"solve", "a.toml", "b.toml"},
                                                         {"solve", "--out"},
                                                         {"solve", "a.toml", "--colour"},
                                                         {"--colour"},
                                                         {"belts", "EP 800/4 6+3", "EP"},
                                                         {"belts", ""},
                                                         {"belts", "rubber"}};
    for (const std::vector<std::string>& arguments : wrong) {
        const Run refused = run(arguments);
        CAPTURE(refused.err);
        CHECK(refused.code == 2);
        CHECK(refused.out.empty());
        CHECK_FALSE(refused.err.empty());
    }
}

TEST_CASE("a command that is none is named with those that are") {
    CHECK(run({"worn", "case.toml"}).err ==
          "swale: there is no command \"worn\"; available: solve, screen, size, spread, study, merge, chart, ranges, report, "
          "belts or wear\n");
    CHECK(run({}).err ==
          "swale: a command is missing; available: solve, screen, size, spread, study, merge, chart, ranges, report, belts or "
          "wear\n");
}

TEST_CASE("mistakes of a case file are printed one a line and leave no folder behind") {
    const ScratchFolder folder;
    const std::string file = (folder.path() / "case.toml").string();
    std::ofstream(file) << "[belt]\nwidth = 1200\nmodulus = 3\n";
    const Run refused = run({"solve", file, "--out", (folder.path() / "result").string()});
    CHECK(refused.code == 2);
    CHECK(refused.err.starts_with(file + ":"));
    CHECK(holds(refused.err, "\n" + file + ":2: belt.width: "));
    CHECK(holds(refused.err, "\n" + file + ":3: belt.modulus: "));
    CHECK(folder.names() == std::vector<std::string>{"case.toml"});
}

TEST_CASE("a case file that is none is wrong input") {
    const ScratchFolder folder;
    CHECK(run({"solve", (folder.path() / "absent.toml").string()}).code == 2);
    CHECK(run({"solve", folder.path().string()}).code == 2);
}

TEST_CASE("results that have no place are noticed before the case is solved") {
    const ScratchFolder folder;
    std::ofstream(folder.path() / "taken") << "a file";
    const Run refused = run({"solve", data + "case.example.toml", "--out", (folder.path() / "taken").string()});
    CHECK(refused.code == 4);
    CHECK(holds(refused.err, "taken"));
    CHECK(file_text(folder.path() / "taken") == "a file");
}

TEST_CASE("results go to a folder of the case's name beside the caller by default") {
    CHECK(default_result_folder("cases/tail/tail.toml") == "tail-result");
}

TEST_CASE("a belt is listed with every number and where it comes from") {
    const Run sheet = run({"belts", "EP 800/4 6+3"});
    CHECK(sheet.code == 0);
    for (const char* name : {"A11", "D22", "thickness", "rated_tension"}) CHECK(holds(sheet.out, name));
    const auto json = nlohmann::json::parse(run({"belts", "EP 800/4 6+3", "--json"}).out);
    CHECK(json["designation"] == "EP 800/4 6+3");
    for (const auto& datum : json["data"]) CHECK_FALSE(datum["source"].get<std::string>().empty());
}

TEST_CASE("the catalogue lists its families") {
    const auto json = nlohmann::json::parse(run({"belts", "--json"}).out);
    CHECK(json["families"].size() >= 2);
    CHECK(holds(run({"belts"}).out, "EP 800/4"));
}

TEST_CASE("screen answers with every hand method, its distance and its source") {
    const Run table = run({"screen", data + "case.example.toml"});
    CHECK(table.code == 0);
    for (const char* method : {"ISO 5293", "DIN 22101 base length", "straight strips", "handbook multiple", "2.3 belt widths"})
        CHECK(holds(table.out, method));
    CHECK(holds(table.out, "Source:"));
    const auto json = nlohmann::json::parse(run({"screen", data + "case.example.toml", "--json"}).out);
    CHECK(json["hand_methods"].size() == 7);
    for (const auto& method : json["hand_methods"]) CHECK(!method["source"].get<std::string>().empty());
    CHECK(run({"screen", data + "no-such.toml"}).code == 2);
}

TEST_CASE("screen on a held case without a given tension says what is missing") {
    const Run held = run({"screen", data + "held.example.toml"});
    CHECK(held.code == 0);
    CHECK(holds(held.out, "needs"));
}

TEST_CASE("ranges refuses a belt whose numbers are all given before it writes anything") {
    const ScratchFolder folder;
    const std::string out = (folder.path() / "ranges").string();
    const Run refused = run({"ranges", data + "held.example.toml", "--out", out});
    CHECK(refused.code == 2);
    CHECK(holds(refused.err, "no number of this belt has a range"));
    CHECK(run({"ranges", data + "no-such.toml", "--out", out}).code == 2);
    CHECK_FALSE(std::filesystem::exists(out));
}

TEST_CASE("size refuses bounds that are none before it writes anything") {
    const ScratchFolder folder;
    const std::string out = (folder.path() / "sized").string(), file = data + "case.example.toml";
    CHECK(run({"size", file, "--out", out, "--longest", "3000"}).code == 2);
    CHECK(run({"size", file, "--out", out, "--shortest", "3 m", "--longest", "2 m"}).code == 2);
    CHECK(run({"size", data + "no-such.toml", "--out", out}).code == 2);
    const Run ignored = run({"size", file, "--out", out, "--find", "lift", "--longest", "3 m"});
    CHECK(ignored.code == 2);
    CHECK(holds(ignored.err, "lift keeps the case's"));
    CHECK(!std::filesystem::exists(out));
}

TEST_CASE("size does not write over the case that it sizes") {
    const ScratchFolder folder;
    const std::filesystem::path own = folder.path() / "case.toml";
    std::filesystem::copy_file(data + "case.example.toml", own);
    const Run refused = run({"size", own.string(), "--out", folder.path().string()});
    CHECK(refused.code == 2);
    CHECK(holds(refused.err, "is the case itself"));
}

}  // namespace swale
