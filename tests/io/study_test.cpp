#include "io/study/study_plan.h"

#include "io/case_file.h"
#include "io/file_error.h"
#include "io/input_error.h"
#include "io/study/journal.h"
#include "io/toml_text.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <numbers>
#include <set>

namespace swale {
namespace {

const std::string base_case = R"(title = "Base"
[belt]
width = "1000 mm"
designation = "EP 800/4 6+3"
[[tension]]
name = "running"
total = "30 kN"
[pulley]
end = "tail"
diameter = "630 mm"
lift = "0 mm"
[trough]
angle = "35 deg"
[transition]
distance = "2400 mm"
)";

/// A folder with base.toml and a study file of that text.
struct StudyFolder {
    ScratchFolder folder;

    explicit StudyFolder(const std::string& study) {
        std::ofstream(folder.path() / "base.toml") << base_case;
        std::ofstream(folder.path() / "study.toml") << study;
    }
    Study read() const { return read_study(folder.path() / "study.toml"); }
};

std::string first_mistake(const std::string& study) {
    try {
        StudyFolder(study).read();
    } catch (const InputErrors& errors) {
        return errors.errors().front().text();
    }
    return "";
}

TransitionCase case_of(const StudyPlan& plan, int number) {
    return parse_case(plan.at(number).text, "case");
}

const std::string grid_study = R"(case = "base.toml"
[[vary]]
key = "trough.angle"
values = ["20 deg", "35 deg"]
[[vary]]
key = "transition.distance"
from = "1 widths"
to = "3 widths"
steps = 3
)";

}  // namespace

TEST_CASE("a document survives being written as TOML") {
    const std::string text =
        base_case + "note = \"quote \\\" back \\\\ tab \\t\"\nreal = 2.0\nwhole = 3\nlist = [1, \"two\"]\non = true\n";
    const std::string once = toml_text(read_toml(text));
    CHECK(toml_text(read_toml(once)) == once);
    const TomlNode again = read_toml(once);
    const TomlNode& transition = std::ranges::find(again.entries, "transition", &TomlEntry::key)->value;
    CHECK(std::ranges::find(transition.entries, "note", &TomlEntry::key)->value.text == "quote \" back \\ tab \t");
    CHECK(std::ranges::find(transition.entries, "real", &TomlEntry::key)->value.type == TomlNode::Type::real);
}

TEST_CASE("a grid holds every combination and its last axis changes fastest") {
    const StudyFolder folder(grid_study);
    const StudyPlan plan(folder.read());
    REQUIRE(plan.size() == 6);
    CHECK(plan.at(1).labels == std::vector<std::string>{"20 deg", "1 widths"});
    CHECK(plan.at(2).labels == std::vector<std::string>{"20 deg", "2 widths"});
    CHECK(plan.at(6).labels == std::vector<std::string>{"35 deg", "3 widths"});
    CHECK(case_of(plan, 5).layout.distance == doctest::Approx(2000));
    CHECK(case_of(plan, 5).layout.trough.angle == doctest::Approx(35 * std::numbers::pi / 180));
}

TEST_CASE("widths and depths and rated refer to the case that they stand in") {
    const StudyFolder folder(R"(case = "base.toml"
[[vary]]
key = "belt.width"
values = ["800 mm", "1200 mm"]
[[vary]]
name = "all"
choices = [ { label = "half", set = { "pulley.lift" = "0.5 depths", "tension[1].total" = "0.6 rated", "transition.distance" = "2.5 widths" } } ]
)");
    const StudyPlan plan(folder.read());
    for (int number : {1, 2}) {
        const TransitionCase transition = case_of(plan, number);
        const TransitionLayout& layout = transition.layout;
        CHECK(layout.distance == doctest::Approx(2.5 * layout.belt_width));
        CHECK(layout.pulley.lift == doctest::Approx(0.5 * layout.trough_depth()));
        CHECK(*transition.states[0].total == doctest::Approx(0.6 * 80 * layout.belt_width));  // EP 800: 80 N/mm rated
    }
}

TEST_CASE("intermediate sets and whole lists of states can be varied") {
    const StudyFolder folder(R"(case = "base.toml"
[[vary]]
name = "sets"
choices = [
  { label = "none", set = { "pulley.lift" = "0 mm" } },
  { label = "one", set = { "transition.idlers" = [ { at = "1.2 widths", angle = "20 deg" } ] } },
]
)");
    const StudyPlan plan(folder.read());
    CHECK(case_of(plan, 1).layout.stations.empty());
    REQUIRE(case_of(plan, 2).layout.stations.size() == 1);
    CHECK(case_of(plan, 2).layout.stations[0].at == doctest::Approx(1200));
}

TEST_CASE("a Latin hypercube draws once from each share of every axis and the same each time") {
    const std::string text = R"(case = "base.toml"
[sample]
latin_hypercube = 40
seed = 7
[[vary]]
key = "transition.distance"
from = "1000 mm"
to = "3000 mm"
[[vary]]
key = "trough.angle"
values = ["20 deg", "30 deg", "35 deg", "45 deg"]
)";
    const StudyFolder folder(text);
    const StudyPlan plan(folder.read()), again(folder.read());
    REQUIRE(plan.size() == 40);
    std::set<int> shares;
    std::map<std::string, int> angles;
    for (int number = 1; number <= 40; ++number) {
        CHECK(plan.at(number).text == again.at(number).text);
        shares.insert(static_cast<int>((case_of(plan, number).layout.distance - 1000) / 50));
        ++angles[plan.at(number).labels[1]];
    }
    CHECK(shares.size() == 40);
    for (const auto& [angle, count] : angles) CHECK(count == 10);
}

TEST_CASE("cases that differ in tension alone form chains of eight at most") {
    const StudyFolder folder(R"(case = "base.toml"
[[vary]]
key = "tension[1].total"
from = "10 kN"
to = "50 kN"
steps = 9
[[vary]]
key = "trough.angle"
values = ["20 deg", "35 deg"]
)");
    const std::vector<std::vector<int>> chains = StudyPlan(folder.read()).chains();
    REQUIRE(chains.size() == 4);
    CHECK(chains[0] == std::vector{1, 3, 5, 7, 9, 11, 13, 15});
    CHECK(chains[1] == std::vector{2, 4, 6, 8, 10, 12, 14, 16});
    CHECK(chains[2] == std::vector{17});
    CHECK(chains[3] == std::vector{18});
}

TEST_CASE("where more than one tension varies, or with other keys, each case is by itself") {
    const std::string together = R"([[vary]]
name = "both"
choices = [ { label = "half", set = { "pulley.lift" = "50 mm", "tension[1].total" = "20 kN" } },
            { label = "flush", set = { "tension[1].total" = "30 kN" } } ]
)";
    CHECK(StudyPlan(StudyFolder("case = \"base.toml\"\n" + together).read()).chains().size() == 2);
    const StudyFolder two("case = \"base.toml\"\n[[vary]]\nkey = \"tension[1].total\"\nvalues = [\"20 kN\", \"30 kN\"]\n");
    CHECK(StudyPlan(two.read()).chains().size() == 1);
    std::ofstream(two.folder.path() / "base.toml") << base_case << "[[tension]]\nname = \"empty\"\ntotal = \"10 kN\"\n";
    CHECK(StudyPlan(two.read()).chains().size() == 2);
    const std::string sampled =
        "[sample]\nlatin_hypercube = 5\n[[vary]]\nkey = \"tension[1].total\"\nfrom = \"20 kN\"\nto = \"30 kN\"\n";
    CHECK(StudyPlan(StudyFolder("case = \"base.toml\"\n" + sampled).read()).chains().size() == 5);
}

TEST_CASE("mistakes of a study file are named with their line and what is allowed") {
    CHECK(first_mistake("case = \"base.toml\"\n").find("vary") != std::string::npos);
    CHECK(first_mistake("case = \"nowhere.toml\"\n[[vary]]\nkey = \"trough.angle\"\nvalues = [\"20 deg\"]\n")
              .find("nowhere.toml") != std::string::npos);
    CHECK(first_mistake("case = \"base.toml\"\n[[vary]]\nkey = \"trough..angle\"\nvalues = [\"20 deg\"]\n")
              .find("study.toml:3: vary[1].key") != std::string::npos);
    CHECK(first_mistake("case = \"base.toml\"\n[[vary]]\nkey = \"tension[2].total\"\nvalues = [\"20 kN\"]\n")
              .find("no tension number 2") != std::string::npos);
    CHECK(
        first_mistake("case = \"base.toml\"\n[[vary]]\nkey = \"trough.angle\"\nfrom = \"20 deg\"\nto = \"35 mm\"\nsteps = 3\n")
            .find("one unit") != std::string::npos);
    CHECK(first_mistake("case = \"base.toml\"\n[[vary]]\nkey = \"trough.angle\"\nfrom = \"20 deg\"\nto = \"35 deg\"\n")
              .find("steps") != std::string::npos);
    CHECK(first_mistake(grid_study + "[[vary]]\nkey = \"trough.angle\"\nvalues = [\"20 deg\"]\n").find("another axis") !=
          std::string::npos);
    CHECK(first_mistake(grid_study + "[[vary]]\nkey = \"trough.angle\"\nname = \"again\"\nvalues = [\"20 deg\"]\n")
              .find("another axis sets trough.angle") != std::string::npos);
    CHECK(first_mistake(grid_study + "steep = 4\n").find("steep") != std::string::npos);
}

TEST_CASE("a journal gives its lines back and takes off one that was cut short") {
    const ScratchFolder folder;
    const auto path = folder.path() / "study.journal";
    {
        Journal journal(path, "header", "another");
        journal.add(3, R"({"case": 3})");
        journal.add(1, R"({"case": 1})");
        CHECK_THROWS_AS(Journal(path, "header", "another"), FileError);  // one process at a time
    }
    std::ofstream(path, std::ios::app) << R"({"case": 2, "half)";
    Journal journal(path, "header", "another");
    CHECK(journal.lines().size() == 2);
    CHECK(!journal.has(2));
    journal.add(2, R"({"case": 2})");
    CHECK(read_journal(path).lines.size() == 3);
}

TEST_CASE("a journal of another study or one with a damaged line is refused and left as it is") {
    const ScratchFolder folder;
    const auto path = folder.path() / "study.journal";
    { Journal(path, "header", "another").add(1, R"({"case": 1})"); }
    CHECK_THROWS_WITH_AS(Journal(path, "changed", "belongs to another study"), doctest::Contains("another study"), FileError);
    const std::string damaged = "header\n{\"case\": 1\n{\"case\": 2}\n";
    std::ofstream(path) << damaged;
    CHECK_THROWS_WITH_AS(Journal(path, "header", "another"), doctest::Contains("line 2 is damaged"), FileError);
    CHECK(file_text(path) == damaged);
}

}  // namespace swale
