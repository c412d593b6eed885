#include "io/report/report.h"
#include "io/markup_text.h"

#include "io/case_file.h"
#include "io/report/packed_numbers.h"
#include "io/report/page.h"
#include "io/report/view_fields.h"
#include "solver/transition.h"
#include "tests/io/held_run.h"
#include "tests/io/sample_run.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <ctime>

using namespace swale;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// What stands between two marks.
std::string between(const std::string& text, const std::string& from, const std::string& to) {
    const size_t begin = text.find(from) + from.size();
    return text.substr(begin, text.find(to, begin) - begin);
}

nlohmann::json data_of(const std::string& html) {
    return nlohmann::json::parse(between(html, "id=\"report-data\">", "</script>"));
}

}  // namespace

TEST_CASE("report: the same run gives the same bytes") {
    CHECK(report_html(sample_run()) == report_html(sample_run()));
}

TEST_CASE("report: verdict and criteria and origins and case file are there without any script") {
    const std::string html = report_html(sample_run());
    const std::string markup = html.substr(0, html.find("<script"));
    for (const char* part : {"NOT CONVERGED", "edge tension", "no published limit is known", "Lock out the drive",
                             "Numbers of the belt", "Convergence record", "# \u00a7 verbatim, with a tab", "3.1e-09",
                             "starting, &quot;wet&quot;", "residual 3.1e-4 &gt; 1e-8"}) {
        INFO(part);
        CHECK(holds(markup, part));
    }
}

TEST_CASE("report: the content policy forbids all but the two hashed parts and data images") {
    const std::string html = report_html(sample_run());
    const std::string policy = between(html, "Content-Security-Policy\" content=\"", "\">");
    CHECK(policy.starts_with("default-src 'none'; script-src 'sha256-"));
    CHECK(holds(policy, "style-src 'sha256-"));
    CHECK_FALSE(holds(policy, "unsafe"));
    CHECK_FALSE(holds(policy, "http"));
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("report: of the shipped cases it takes no more than half a second and 1.5 MB") {
    for (const std::string name : {"reclaim-r3-tail", "shiploader-s1-tail"}) {
        RunRecord record;
        record.case_file = SWALE_SOURCE_DIR "/cases/" + name + "/" + name + ".toml";
        record.case_text = file_text(record.case_file);
        record.transition = parse_case(record.case_text, record.case_file);
        record.result = solve_transition(record.transition);
        const std::clock_t start = std::clock();
        const std::string html = report_html(record);
        const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
        MESSAGE(name << ": " << seconds << " s, " << html.size() << " bytes");
        CHECK(seconds < 0.5);
        CHECK(html.size() < 1'500'000);
    }
}

TEST_CASE("report: eight states of a whole belt stay within 1.5 MB and say that they are thinned") {
    RunRecord record;
    record.case_file = SWALE_SOURCE_DIR "/cases/reclaim-r3-tail/reclaim-r3-tail.toml";
    record.case_text = file_text(record.case_file) + "\n[solve]\nmodel = \"full\"\n";
    record.transition = parse_case(record.case_text, record.case_file);
    record.result = solve_transition(record.transition);
    const std::vector<StateResult> solved = record.result.states;
    for (size_t k = solved.size(); k < 8; ++k) {
        record.result.states.push_back(solved[k % solved.size()]);
        record.result.states.back().name += " again " + std::to_string(k);
    }
    const std::string html = report_html(record);
    MESSAGE(html.size() << " bytes");
    CHECK(html.size() < 1'500'000);
    const BeltSurface& surface = solved[0].surface;
    const auto state = data_of(html)["states"][0];
    CHECK(state["thinned"] == true);
    CHECK(state["solution"] == nlohmann::json{surface.along, surface.across});
    for (const double x : state["x"])  // every line of the picture is one of the solution's, none is made up between
        CHECK(std::ranges::any_of(surface.points, [&](const SurfacePoint& point) { return point.x == x; }));
}
#endif

TEST_CASE("report: colours of a strain leave out what is singular at a held far end") {
    const RunRecord record = held_run(2);
    const StateResult& state = record.result.states[0];
    const ViewField& strain = view_fields().front();
    const FieldRange all = range_of(strain, state, {}),
                     cut = range_of(strain, state, held_lines(record.transition.layout, state));
    CHECK(held_lines(record.transition.layout, state) == std::vector<double>{state.surface.points.back().x});
    CHECK(cut.high < all.high);
    double high = -INFINITY;
    for (const SurfacePoint& point : state.surface.points)
        if (point.x >= state.excluded && point.x <= state.surface.points.back().x - state.excluded)
            high = std::max(high, 100 * point.strain);
    CHECK(cut.high == high);
}

TEST_CASE("report: hostile text in titles and names stays text") {
    RunRecord record = sample_run();
    const std::string hostile = "</script><script>alert(1)</script>\"'><img src=x onerror=alert(2)>\u2028\u202e";
    record.transition.title = record.result.states[0].name = record.transition.states[0].name = hostile;
    record.transition.belt.designation = record.case_file = record.case_text = hostile;
    for (Judgement& judgement : record.result.criteria) judgement.name = judgement.state = judgement.source = hostile;
    const std::string html = report_html(record);
    CHECK_FALSE(holds(html, "<img src=x"));
    CHECK_FALSE(holds(html, "<script>alert"));
    CHECK(data_of(html)["states"][0]["name"] == with_visible_directions(hostile));
    CHECK(holds(html, "<h1><bdi>&lt;/script&gt;"));
}

TEST_CASE("report: numbers are packed to a share of their range") {
    std::vector<double> numbers;
    for (int k = 0; k < 1000; ++k) numbers.push_back(std::sin(0.01 * k) * 3 + 1e-5 * k);
    const auto entry = packed(numbers, 10);
    const auto [low, high] = std::ranges::minmax(numbers);
    CHECK(entry["low"] == low);
    CHECK(entry["high"] == high);
    CHECK(entry["data"].get<std::string>().size() < 1000 * 2 * 4 / 3);
}

TEST_CASE("report: what another command adds stands behind the answer") {
    const std::string html = report_html(sample_run(), {{"search", "How it was found", "<p>tried 1500 mm</p>"}});
    CHECK(html.find("id=\"answer\"") < html.find("id=\"search\""));
    CHECK(html.find("id=\"search\"") < html.find("id=\"map\""));
    CHECK(holds(html, "<p>tried 1500 mm</p>"));
}

TEST_CASE("report: a run without any solution says so and has no pictures of it") {
    RunRecord record = sample_run();
    record.result.states.erase(record.result.states.begin());
    record.result.criteria.clear();
    const std::string html = report_html(record);
    CHECK(holds(html, "No state has a solution to be shown."));
    CHECK(holds(html, "residual 3.1e-4 &gt; 1e-8 after 60 iterations"));
    CHECK(data_of(html)["states"].empty());
    CHECK(data_of(html)["leading"] == -1);
}

TEST_CASE("report: a page without data has no script at all") {
    const std::string html = page_html({"Wear of a roll", "What wears it?", "<p>body</p>"});
    CHECK_FALSE(holds(html, "<script"));
    CHECK(holds(html, "script-src 'none'"));
}
