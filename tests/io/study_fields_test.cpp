#include "io/study/case_record.h"
#include "io/surface_fields.h"
#include "io/text_file.h"
#include "io/whole_file.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

namespace swale {
namespace {

const std::string study_text = R"(case = "held.toml"
fields = true
[[vary]]
key = "tension[1].elongation"
values = ["4 mm", "6 mm"]
)";

StudyPlan plan_in(const std::filesystem::path& folder) {
    write_whole_file(folder / "held.toml", read_text_file(SWALE_SOURCE_DIR "/tests/io/data/held.example.toml"));
    write_whole_file(folder / "study.toml", study_text);
    return StudyPlan(read_study(folder / "study.toml"));
}

}  // namespace

TEST_CASE("a study keeps the belt's surface of each case if asked") {
    const ScratchFolder scratch;
    const StudyPlan plan = plan_in(scratch.path());
    REQUIRE(plan.study().fields);
    const auto record = case_records({plan.at(2)}, "held", true).front();
    REQUIRE(record.at("status") == "solved");
    const auto& kept = record.at("fields").at(0);
    const std::size_t points = kept.at("along").get<std::size_t>() * kept.at("across").get<std::size_t>();
    for (const SurfaceField& field : surface_fields()) CHECK(kept.at("values").at(field.name).size() == points * field.size());

    CHECK_FALSE(case_records({plan.at(2)}, "held", false).front().contains("fields"));
}

TEST_CASE("cases of a chain come out in their order, as by themselves to the solver's tolerance, each with its own fault") {
    const ScratchFolder scratch;
    const StudyPlan plan = plan_in(scratch.path());
    PlannedCase wrong = plan.at(1);
    wrong.text += "\nsteep = 1\n";
    const auto records = case_records({plan.at(1), wrong, plan.at(2)}, "held", false);
    REQUIRE(records.size() == 3);
    CHECK(records[1].at("status") == "bad input");
    for (const int number : {1, 2}) {
        const auto& carried = records[number == 1 ? 0 : 2];
        const auto alone = case_records({plan.at(number)}, "held", false).front();
        CHECK(carried.at("case") == number);
        REQUIRE(carried.at("summary").at("states").size() == 1);
        const auto edge = nlohmann::ordered_json::json_pointer("/summary/states/0/edge_strain_max/value");
        CHECK(carried.at(edge).get<double>() == doctest::Approx(alone.at(edge).get<double>()).epsilon(1e-7));
    }
}

TEST_CASE("a case to which another axis gave more states keeps them all") {
    const ScratchFolder scratch;
    const StudyPlan plan = plan_in(scratch.path());
    PlannedCase more = plan.at(2);
    more.text += "\n[[tension]]\nname = \"more\"\nelongation = \"5 mm\"\n";
    const auto records = case_records({plan.at(1), more}, "held", false);
    CHECK(records[0].at("summary").at("states").size() == 1);
    CHECK(records[1].at("summary").at("states").size() == 2);
}

}  // namespace swale
