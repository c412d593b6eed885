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
    const auto record = case_record(plan.at(2), "held", true);
    REQUIRE(record.at("status") == "solved");
    const auto& kept = record.at("fields").at(0);
    const std::size_t points = kept.at("along").get<std::size_t>() * kept.at("across").get<std::size_t>();
    for (const SurfaceField& field : surface_fields()) CHECK(kept.at("values").at(field.name).size() == points * field.size());

    CHECK_FALSE(case_record(plan.at(2), "held", false).contains("fields"));
}

}  // namespace swale
