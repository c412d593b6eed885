#include "io/stored_result.h"

#include "io/case_file.h"
#include "io/file_error.h"
#include "io/report/report.h"
#include "io/result_files.h"
#include "io/summary_json.h"
#include "io/whole_file.h"
#include "solver/transition.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

RunRecord quick_run() {
    RunRecord record;
    record.case_file = SWALE_SOURCE_DIR "/tests/io/data/held.example.toml";
    record.case_text = file_text(record.case_file) + "\n[solve]\ngrid = 3\n";
    record.transition = parse_case(record.case_text, record.case_file);
    record.result = solve_transition(record.transition);
    return record;
}

}  // namespace

TEST_CASE("a stored result gives the same report as the run itself") {
    const ScratchFolder folder;
    const RunRecord record = quick_run();
    write_result_files(folder.path(), record);
    const StoredResult stored = read_result_folder(folder.path());
    CHECK(report_html(stored.record) == report_html(record));
    CHECK(stored.record.result.states[0].edge_strain_max.error == record.result.states[0].edge_strain_max.error);
}

TEST_CASE("a folder without a result or with files of two runs is refused") {
    const ScratchFolder folder;
    CHECK_THROWS_AS(read_result_folder(folder.path() / "nowhere"), FileError);
    CHECK_THROWS_AS(read_result_folder(folder.path()), FileError);
    RunRecord record = quick_run();
    write_result_files(folder.path(), record);
    record.result.states[0].reason = "residual 1e-3 of another run";
    write_whole_file(folder.path() / "summary.json", summary_json(record));
    CHECK_THROWS_WITH_AS(read_result_folder(folder.path()), doctest::Contains("two different runs"), FileError);
    write_whole_file(folder.path() / "summary.json", "{}");
    CHECK_THROWS_WITH_AS(read_result_folder(folder.path()), doctest::Contains("no summary"), FileError);
}
