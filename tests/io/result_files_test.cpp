#include "io/result_files.h"

#include "io/file_error.h"
#include "io/whole_file.h"
#include "tests/io/sample_run.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace swale;

TEST_CASE("result files: every file of a run is there and nothing else") {
    const ScratchFolder folder;
    const RunRecord record = sample_run();
    write_result_files(folder.path() / "out", record);
    CHECK(folder.names("out") ==
          std::vector<std::string>{"across.csv", "along.csv", "case.toml", "report.html", "result.h5", "summary.json", "vtk"});
    CHECK(folder.names("out/vtk") ==
          std::vector<std::string>{"rolls.vtp", "state-1-running-full-belt.vts", "state-1-running-full.vtm", "states.pvd"});
    CHECK(file_text(folder.path() / "out" / "case.toml") == record.case_text);
}

TEST_CASE("result files: the catalogue of a case stands beside it and never in its place") {
    const ScratchFolder folder;
    RunRecord record = sample_run();
    for (const auto& [given, kept] : {std::pair("pier/my-belts.toml", "my-belts.toml"),
                                      std::pair("pier/case.toml", "catalogue.toml"), std::pair("belts", "catalogue.toml")}) {
        record.catalogue = CatalogueFile{given, "[[belt]]\n"};
        write_result_files(folder.path() / "out", record);
        CHECK(file_text(folder.path() / "out" / kept) == "[[belt]]\n");
        CHECK(file_text(folder.path() / "out" / "case.toml") == record.case_text);
    }
}

TEST_CASE("result files: a run leaves no state of an older run behind") {
    const ScratchFolder folder;
    write_whole_file(folder.path() / "out/vtk/state-7-long-ago.vtm", "old");
    write_whole_file(folder.path() / "out/vtk/notes.txt", "the user's");
    write_result_files(folder.path() / "out", sample_run());
    const std::vector<std::string> names = folder.names("out/vtk");
    CHECK(std::count(names.begin(), names.end(), "state-7-long-ago.vtm") == 0);
    CHECK(std::count(names.begin(), names.end(), "notes.txt") == 1);
}

TEST_CASE("result files: two runs make the same bytes but for summary.json's cost") {
    const ResultFileList one = result_files(sample_run(), "then"), other = result_files(sample_run(), "then");
    REQUIRE(one.size() == other.size());
    for (size_t i = 0; i < one.size(); ++i) {
        CHECK(one[i].name == other[i].name);
        if (one[i].name != "summary.json") CHECK(one[i].content == other[i].content);
    }
}

TEST_CASE("result files: the summary is the last to be written") {
    CHECK(result_files(sample_run(), "then").back().name == "summary.json");
}

TEST_CASE("result files: a place that can't hold them is an error and leaves nothing behind") {
    const ScratchFolder folder;
    write_whole_file(folder.path() / "out", "a file where the folder should be");
    CHECK_THROWS_AS(write_result_files(folder.path() / "out", sample_run()), FileError);
    CHECK(folder.names() == std::vector<std::string>{"out"});
}
