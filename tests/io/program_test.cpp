// The built program itself, from a case file to exit code and files: what a script that calls it sees.
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

namespace swale {
namespace {

/// A short held strip on a coarse grid: solved in a second.
const std::string quick_case = R"(title = "Short strip"
[belt]
width = "800 mm"
rated_tension = "80 N/mm"
[belt.section]
kind = "textile"
thickness = "10 mm"
mass = "0 kg/m^2"
A11 = "8000 N/mm"
A22 = "2500 N/mm"
A12 = "500 N/mm"
A66 = "500 N/mm"
D11 = "70 N m"
D22 = "25 N m"
D12 = "5 N m"
D66 = "8 N m"
[[tension]]
name = "drawn"
elongation = "6 mm"
[pulley]
end = "tail"
diameter = "630 mm"
support = "held"
[trough]
angle = "20 deg"
support = "held"
junction_radius = "150 mm"
[transition]
distance = "1500 mm"
[solve]
grid = 4
)";

struct Run {
    int code = 0;
    std::string out;
    std::string err;
};

/// The program in a shell whose current folder is `folder`; `arguments` as typed there. Standard error is no terminal.
Run run(const ScratchFolder& folder, const std::string& arguments, const std::string& out = "out.txt") {
    const std::string command = "cd '" + folder.path().string() + "' && " + SWALE_PROGRAM + " " + arguments;
    const int status = std::system((command + " >" + out + " 2>err.txt").c_str());
    return {WEXITSTATUS(status), file_text(folder.path() / "out.txt"), file_text(folder.path() / "err.txt")};
}

void put(const ScratchFolder& folder, const std::string& name, const std::string& text) {
    std::ofstream(folder.path() / name, std::ios::binary) << text;
}

bool holds(const std::string& text, const std::string& phrase) {
    return text.find(phrase) != std::string::npos;
}

}  // namespace

TEST_CASE("a case within its limits ends with 0 and its results in a folder of its name and no progress where no terminal is") {
    const ScratchFolder folder;
    put(folder, "strip.toml", quick_case);
    const Run done = run(folder, "solve strip.toml");
    CAPTURE(done.err);
    CHECK(done.code == 0);
    CHECK(done.err.empty());
    CHECK(holds(done.out, "strip-result"));
    CHECK(file_text(folder.path() / "strip-result/case.toml") == quick_case);
    const auto summary = nlohmann::json::parse(file_text(folder.path() / "strip-result/summary.json"));
    CHECK(summary["verdict"] == "within limits");
    for (const char* file : {"along.csv", "across.csv", "result.h5"})
        CHECK(std::filesystem::is_regular_file(folder.path() / "strip-result" / file));
}

TEST_CASE("a case over a limit that was given ends with 1 and --json answers with summary.json alone") {
    const ScratchFolder folder;
    put(folder, "strip.toml", quick_case + "[limits]\nedge_strain = \"0.01 %\"\n");
    const Run done = run(folder, "solve strip.toml --json --out here");
    CAPTURE(done.err);
    CHECK(done.code == 1);
    CHECK(done.err.empty());
    CHECK(nlohmann::json::parse(done.out)["verdict"] == "over a limit");
    CHECK(done.out == file_text(folder.path() / "here/summary.json"));
}

TEST_CASE("a state that is not converged ends with 3 even where a limit is exceeded and names the state and the reason") {
    const ScratchFolder folder;
    put(folder, "strip.toml", quick_case + "newton_iterations = 1\n[limits]\nedge_strain = \"0.01 %\"\n");
    const Run done = run(folder, "solve strip.toml --json");
    CAPTURE(done.err);
    CHECK(done.code == 3);
    const auto summary = nlohmann::json::parse(done.out);
    CHECK(summary["verdict"] == "not converged");
    CHECK(summary["states"][0]["name"] == "drawn");
    CHECK_FALSE(summary["states"][0]["reason"].get<std::string>().empty());
    CHECK(std::filesystem::is_regular_file(folder.path() / "strip-result/summary.json"));
}

TEST_CASE("ranges ranks a belt's uncertain numbers and its ends are what solve gives for a belt measured there") {
    const ScratchFolder folder;
    const std::string text = file_text(std::string(SWALE_SOURCE_DIR) + "/tests/io/data/ranges.example.toml");
    put(folder, "strip.toml", text);
    const Run done = run(folder, "ranges strip.toml --json");
    CAPTURE(done.err);
    CHECK(done.code == 0);
    CHECK(done.out == file_text(folder.path() / "strip-ranges/ranges.json"));
    const auto ranges = nlohmann::json::parse(done.out);
    double before = 1e9;
    for (const auto& datum : ranges["data"]) {
        double most = 0;
        for (const auto& effect : datum["effects"]) most = std::max(most, effect["swing"].get<double>());
        CHECK(most <= before);
        before = most;
    }
    const auto& modulus =
        *std::find_if(ranges["data"].begin(), ranges["data"].end(), [](auto& d) { return d["name"] == "A11"; });
    for (const char* end : {"low", "high"}) {
        const std::string measured = "modulus = \"" + modulus[end].dump() + " N/mm\"\n";
        put(folder, "measured.toml", std::string(text).insert(text.find("width"), measured));
        const auto summary = nlohmann::json::parse(run(folder, "solve measured.toml --json").out);
        for (const char* key : {"edge_strain_max", "junction_bending_strain_max"})
            CHECK(summary["states"][0][key]["value"] == modulus[std::string("at_") + end]["states"][0][key]["value"]);
    }
}

TEST_CASE("the range of the rating moves what the edge tension is held against and no solution") {
    const ScratchFolder folder;
    const std::string text = file_text(std::string(SWALE_SOURCE_DIR) + "/tests/io/data/ranges.example.toml");
    put(folder, "strip.toml", text);
    const auto summary = nlohmann::json::parse(run(folder, "solve strip.toml --json").out);
    double ratio = 0;
    for (const auto& entry : summary["criteria"])
        if (entry["name"] == "edge tension / rated tension") ratio = entry["value"];
    REQUIRE(ratio > 0);
    put(folder, "near.toml", text + "[limits]\nedge_tension = " + std::to_string(1.08 * ratio) + "\n");
    const Run done = run(folder, "ranges near.toml --json");
    CHECK(done.code == 1);
    const auto ranges = nlohmann::json::parse(done.out);
    for (const auto& datum : ranges["data"]) {
        if (datum["name"] != "rated_tension") continue;
        CHECK(datum["at_low"]["states"] == ranges["as_given"]["states"]);
        CHECK(datum["at_low"]["exceeded"].size() == 1);  // a rating of 1/11.5 of the strength is 15 % less than a tenth
        CHECK(datum["at_high"]["exceeded"].empty());
        for (const auto& effect : datum["effects"]) CHECK(effect["swing"] == 0);
        return;
    }
    FAIL("no rated_tension");
}

TEST_CASE("ranges answers people with a table and with what is to be measured first") {
    const ScratchFolder folder;
    put(folder, "strip.toml", file_text(std::string(SWALE_SOURCE_DIR) + "/tests/io/data/ranges.example.toml"));
    const Run done = run(folder, "ranges strip.toml --out here");
    CHECK(done.code == 0);
    CHECK(holds(done.out, "edge strain: A11 ("));
    CHECK(holds(done.out, "rated_tension moves no strain, but edge tension / rated tension, by 25 % from end"));
    CHECK(holds(done.out, "every limit holds at every end"));
    CHECK(holds(done.out, "Lock out the drive"));
    std::istringstream lines(done.out);
    for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 102);  // of which two bytes may be one character
}

TEST_CASE("wrong input ends with 2 and leaves nothing behind") {
    const ScratchFolder folder;
    put(folder, "strip.toml", quick_case + "grit = 4\n");
    const Run refused = run(folder, "solve strip.toml --json");
    CHECK(refused.code == 2);
    CHECK(refused.out.empty());
    CHECK(holds(refused.err, "strip.toml:32: solve.grit: unknown key, did you mean grid?; given 4; allowed: "));
    CHECK(run(folder, "solve absent.toml").code == 2);
    CHECK(run(folder, "solve .").code == 2);
    CHECK(run(folder, "solv strip.toml").code == 2);
    CHECK(run(folder, "").code == 2);
    CHECK(folder.names() == std::vector<std::string>{"err.txt", "out.txt", "strip.toml"});
}

TEST_CASE("results or an answer that can't be written end with 4") {
    const ScratchFolder folder;
    put(folder, "strip.toml", quick_case);
    const Run refused = run(folder, "solve strip.toml --out out.txt");
    CHECK(refused.code == 4);
    CHECK(holds(refused.err, "out.txt"));
    CHECK(run(folder, "solve strip.toml --out strip.toml/below").code == 4);
    CHECK(file_text(folder.path() / "strip.toml") == quick_case);
    CHECK(run(folder, "belts", "/dev/full").code == 4);
}

}  // namespace swale
