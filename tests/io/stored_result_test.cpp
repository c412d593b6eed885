#include "io/stored_result.h"

#include "io/file_error.h"
#include "io/report/report.h"
#include "io/report/sizing_report.h"
#include "io/report_command.h"
#include "io/result_files.h"
#include "io/size_json.h"
#include "io/summary_json.h"
#include "io/text_file.h"
#include "io/whole_file.h"
#include "tests/io/held_run.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <cmath>
#include <sstream>

using namespace swale;

TEST_CASE("a stored result gives the same report as the run itself") {
    const ScratchFolder folder;
    RunRecord record = held_run(3);
    TensionPathRow solved;
    solved.tension = 40e3;
    solved.converged = true;
    solved.edge_strain_max.value = 0.009;
    solved.eigenvalue_symmetric = 2e-5;
    TensionPathRow unsolved;
    unsolved.tension = 20e3;
    record.result.path = {{solved, unsolved}, 25e3, {}};
    write_result_files(folder.path(), record);
    const StoredResult stored = read_result_folder(folder.path());
    CHECK(report_html(stored.record) == report_html(record));
    CHECK(stored.record.result.states[0].edge_strain_max.error == record.result.states[0].edge_strain_max.error);
}

namespace {

/// A search that was not made, for the sized case of a held run.
Sizing made_up_search(const RunRecord& record) {
    const TransitionCase& sized = record.transition;
    TransitionCase other = sized;
    other.layout.distance += 350;
    other.layout.stations = {{other.layout.distance / 2, 0.2, {}, {}, {}}};
    Sizing sizing;
    sizing.best = Arrangement{"pulley 95 mm up", sized, true, 0.0123456789, "edge tension in \"running\""};
    sizing.arrangements = {*sizing.best, {"one set of <11> deg", other, false, -INFINITY, "no answer: \"no solution\""}};
    sizing.steps = {{other.layout, true, false, false, -0.25, "edge"},
                    {sized.layout, false, true, true, 0.0123456789, "edge"},
                    {other.layout, false, false, false, -INFINITY, "no solution"}};
    sizing.levers = {{"lift", "mm", 1e-4, {}, -3.3}, {"tension", "N", -1e-6, 120.5, {}}};
    sizing.reason = "edge tension binds";
    sizing.states_tried = 7;
    sizing.whole_solutions = 2;
    return sizing;
}

std::string report_made_again(const std::filesystem::path& folder) {
    std::ostringstream answer;
    run_report({folder, "none"}, answer);
    return read_text_file(folder / "report.html");
}

}  // namespace

TEST_CASE("the report of a sized case shows its search when it is made again") {
    const ScratchFolder folder;
    const RunRecord record = held_run(3);
    const Sizing sizing = made_up_search(record);
    for (const SizingAim aim : {SizingAim::distance, SizingAim::all}) {
        SizingBounds bounds;
        bounds.aim = aim;
        write_whole_file(folder.path() / "sizing.json", size_json(sizing, bounds, "title"));
        write_result_files(folder.path(), record, {sizing_report(sizing, bounds)});
        const std::string once = read_text_file(folder.path() / "report.html");
        CHECK(once.find("How it was sized") != std::string::npos);
        CHECK(report_made_again(folder.path()) == once);
    }
}

TEST_CASE("a search of another case is left out of the report and a damaged one refused") {
    const ScratchFolder folder;
    RunRecord record = held_run(3);
    write_result_files(folder.path(), record);
    const std::string plain = read_text_file(folder.path() / "report.html");
    Sizing sizing = made_up_search(record);
    sizing.arrangements.front().transition.layout.distance += 40;
    write_whole_file(folder.path() / "sizing.json", size_json(sizing, {}, "title"));
    CHECK(report_made_again(folder.path()) == plain);
    write_whole_file(folder.path() / "sizing.json", "{\"find\": \"distance\"}");
    CHECK_THROWS_AS(report_made_again(folder.path()), FileError);
}

TEST_CASE("a folder without a result or with files of two runs is refused") {
    const ScratchFolder folder;
    CHECK_THROWS_AS(read_result_folder(folder.path() / "nowhere"), FileError);
    CHECK_THROWS_AS(read_result_folder(folder.path()), FileError);
    RunRecord record = held_run(3);
    write_result_files(folder.path(), record);
    record.result.states[0].reason = "residual 1e-3 of another run";
    write_whole_file(folder.path() / "summary.json", summary_json(record));
    CHECK_THROWS_WITH_AS(read_result_folder(folder.path()), doctest::Contains("two different runs"), FileError);
    write_whole_file(folder.path() / "summary.json", "{}");
    CHECK_THROWS_WITH_AS(read_result_folder(folder.path()), doctest::Contains("no summary"), FileError);
}
