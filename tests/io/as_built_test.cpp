#include "io/quantity.h"
#include "io/size_command.h"
#include "io/size_json.h"
#include "io/terminal/as_built_section.h"
#include "io/text_file.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>
#include <string>

namespace swale {

namespace {

Arrangement arrangement(const std::string& name, double headroom) {
    Arrangement one;
    one.name = name;
    one.passes = headroom >= 0;
    one.headroom = headroom;
    one.binding = "edge strain in \"starting\"";
    one.transition.layout.distance = 2000;
    return one;
}

AsBuilt standing(double measured, double best) {
    AsBuilt as_built;
    as_built.measured = arrangement("as measured", measured);
    as_built.drawn = arrangement("as drawn", 0.08);
    as_built.changes = {arrangement("pulley 50 mm higher", best), arrangement("pulley 200 mm farther away", best - 0.01)};
    as_built.levers = {{"pulley place", "mm", 5e-4, 40, {}}};
    as_built.result.states.resize(1);
    as_built.result.states[0].status = SolveStatus::converged;
    return as_built;
}

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the headline says how far the measured transition is from what limit and which change leaves most") {
    const std::string over = as_built_headline(standing(-0.02, 0.03));
    CHECK(over.starts_with("AS MEASURED: OVER A LIMIT: edge strain in \"starting\", over by 2.0 %"));
    CHECK(contains(over, "as drawn 8.0 % left"));
    CHECK(contains(over, "one buys most: pulley 50 mm higher, 3.0 % left"));
    CHECK(as_built_headline(standing(0.01, 0.03)).starts_with("AS MEASURED: WITHIN LIMITS"));
}

TEST_CASE("changes that leave less than there is are not recommended") {
    CHECK(contains(as_built_headline(standing(0.04, 0.03)), "None of the single changes tried leaves more"));
}

TEST_CASE("a measured transition without a solution is told as such") {
    AsBuilt as_built = standing(-1, 0.03);
    as_built.result.states[0].status = SolveStatus::not_converged;
    CHECK(as_built_headline(as_built).starts_with("AS MEASURED: NOT CONVERGED"));
}

TEST_CASE("the table has the gain of each change over the measured transition and what is needed to first order") {
    const std::string table = as_built_tables(standing(-0.02, 0.03));
    CHECK(contains(table, "+5.0"));
    CHECK(contains(table, "+4.0"));
    CHECK(contains(table, "+10.0"));  // as drawn
    CHECK(contains(table, "+40 mm"));
}

TEST_CASE("as-built.json has the measured and the drawn transition and the changes best first") {
    const auto json = nlohmann::json::parse(as_built_json(standing(-0.02, 0.03), "a title"));
    CHECK(json["title"] == "a title");
    CHECK(json["as_measured"]["headroom"] == doctest::Approx(-0.02));
    CHECK(json["as_drawn"]["passes"] == true);
    CHECK(json["changes"][0]["name"] == "pulley 50 mm higher");
    CHECK(json["levers"][0]["headroom_per_unit"] == doctest::Approx(5e-4));
}

TEST_CASE("a standing transition is not sized: what is looked for can't be chosen") {
    SizeRequest request;
    request.case_file = std::string(SWALE_SOURCE_DIR) + "/cases/gallery-g4-tail/gallery-g4-tail.toml";
    request.find = "distance";
    std::ostringstream answer;
    CHECK_THROWS_WITH_AS(run_size(request, answer), doctest::Contains("[survey]"), BadQuantity);
    CHECK(answer.str().empty());
}

TEST_CASE("nor can its case file choose what is looked for") {
    const ScratchFolder scratch;
    const std::string given = std::string(SWALE_SOURCE_DIR) + "/cases/gallery-g4-tail/gallery-g4-tail.toml";
    SizeRequest request;
    request.case_file = scratch.path() / "case.toml";
    std::ofstream(request.case_file) << read_text_file(given) << "\n[size]\nfind = \"lift\"\n";
    std::ostringstream answer;
    CHECK_THROWS_WITH_AS(run_size(request, answer), doctest::Contains("size.find"), BadQuantity);
}

}  // namespace swale
