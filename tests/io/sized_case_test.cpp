#include "io/sized_case.h"

#include "io/case_file.h"
#include "io/text_file.h"

#include <doctest/doctest.h>

#include <string>

namespace swale {

namespace {

const std::string example = read_text_file(std::string(SWALE_SOURCE_DIR) + "/tests/io/data/case.example.toml");

}  // namespace

TEST_CASE("a sized case has the distance rounded up, its sets at the same shares, and all else as it was") {
    const TransitionCase before = parse_case(example, "case.toml");
    const std::string text = with_distance(example, 3000.2);
    const TransitionCase sized = parse_case(text, "case.toml");
    CHECK(sized.layout.distance == 3001);
    REQUIRE(sized.layout.stations.size() == before.layout.stations.size());
    for (std::size_t k = 0; k < sized.layout.stations.size(); ++k)
        CHECK(sized.layout.stations[k].at / sized.layout.distance ==
              doctest::Approx(before.layout.stations[k].at / before.layout.distance).epsilon(2e-4));
    CHECK(sized.belt.designation == before.belt.designation);
    CHECK(text.find("# pulley top to the first full-trough set, along x") != std::string::npos);
}

TEST_CASE("a distance in another unit or an inline table is found too") {
    const std::string inline_table =
        "transition = { distance = \"2.4 m\" }\n[belt]\nwidth = \"1200 mm\"\ndesignation = \"EP 800/4 6+3\"\n[[tension]]\nname "
        "= "
        "\"a\"\ntotal = \"45 kN\"\n[pulley]\nend = \"tail\"\ndiameter = \"630 mm\"\n[trough]\nangle = \"35 deg\"\n";
    CHECK(parse_case(with_distance("title = \"t\"\n" + inline_table, 1800), "case.toml").layout.distance == 1800);
}

TEST_CASE("a case with another arrangement reads back as that arrangement and is else what it was") {
    const TransitionCase before = parse_case(example, "case.toml");
    TransitionLayout after = before.layout;
    after.distance = 2210;
    after.pulley.lift = 64;
    after.stations = {{700, 0.1, {}, Support::rolls, {}}, {1500, 0.3, 12.0, Support::rolls, {}}};
    const TransitionCase sized = parse_case(with_arrangement(example, before.layout, after), "case.toml");
    CHECK(sized.layout.distance == 2210);
    CHECK(sized.layout.pulley.lift == 64);
    REQUIRE(sized.layout.stations.size() == 2);
    CHECK(sized.layout.stations[1].at == 1500);
    CHECK(sized.layout.stations[1].angle == doctest::Approx(0.3).epsilon(1e-5));
    CHECK(sized.layout.stations[1].lift == 12);
    CHECK(!sized.layout.stations[0].lift);
    CHECK(sized.states.size() == before.states.size());
    CHECK(sized.belt.section.membrane == before.belt.section.membrane);
    after.stations.clear();
    CHECK(parse_case(with_arrangement(example, before.layout, after), "case.toml").layout.stations.empty());
}

}  // namespace swale
