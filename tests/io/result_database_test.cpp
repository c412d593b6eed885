#include "io/result_database.h"

#include "io/file_error.h"
#include "io/whole_file.h"
#include "tests/io/sample_run.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

using namespace swale;

TEST_CASE("result.h5: what restores a run reads back to the same bits") {
    const ScratchFolder folder;
    const RunRecord record = sample_run();
    write_whole_file(folder.path() / "result.h5", result_database(record, "2026-01-02T03:04:05Z"));
    const StoredRun run = read_result_database(folder.path() / "result.h5");

    CHECK(run.written_at == "2026-01-02T03:04:05Z");
    CHECK(run.case_text == record.case_text);
    CHECK(run.case_file == record.case_file);
    CHECK(run.sets == 4);
    REQUIRE(run.states.size() == 2);
    const BeltShape &shape = run.states[0].shape, &given = record.result.states[0].shape;
    CHECK(shape.knots_along == given.knots_along);
    CHECK(shape.knots_across == given.knots_across);
    CHECK(shape.control_points == given.control_points);
    CHECK(run.states[0].status == SolveStatus::converged);
    CHECK(run.states[0].asked.total == 45000);
    CHECK(!run.states[0].asked.elongation.has_value());
    CHECK(run.states[0].asked.loaded);
    CHECK_FALSE(run.states[1].asked.loaded);
    CHECK(run.states[1].asked.name == record.result.states[1].name);
    CHECK(run.states[1].status == SolveStatus::not_converged);
    CHECK(run.states[1].reason == record.result.states[1].reason);
    CHECK(run.states[1].shape.control_points.size() == 0);
}

TEST_CASE("result.h5: the catalogue that a case names is kept with it") {
    const ScratchFolder folder;
    RunRecord record = sample_run();
    const auto kept = [&] {
        write_whole_file(folder.path() / "result.h5", result_database(record, "then"));
        return read_result_database(folder.path() / "result.h5").catalogue_text;
    };
    CHECK_FALSE(kept().has_value());
    record.catalogue = CatalogueFile{"pier/my-belts.toml", "[[belt]]\n"};
    CHECK(kept() == "[[belt]]\n");
}

TEST_CASE("result.h5: equal content makes equal bytes") {
    CHECK(result_database(sample_run(), "then") == result_database(sample_run(), "then"));
}

TEST_CASE("result.h5: a missing file and a broken one and a foreign one are refused with the path") {
    const ScratchFolder folder;
    const auto path = folder.path() / "result.h5";
    CHECK_THROWS_AS(read_result_database(path), FileError);
    const std::string whole = result_database(sample_run(), "then");
    write_whole_file(path, whole.substr(0, whole.size() / 2));
    CHECK_THROWS_AS(read_result_database(path), FileError);
    write_whole_file(path, "not HDF5 at all");
    CHECK_THROWS_AS(read_result_database(path), FileError);
}
