#include "io/stored_result.h"

#include "io/case_file.h"
#include "io/file_error.h"
#include "io/hdf5/stored_surface.h"
#include "io/result_database.h"
#include "io/stored_summary.h"
#include "io/verdict.h"

namespace swale {

namespace {

/// The files of a folder are written one by one: a kill in between leaves those of two runs.
void refuse_mixture(const StoredRun& run, const TransitionResult& result, const std::filesystem::path& folder) {
    bool same = run.states.size() == result.states.size();
    for (size_t i = 0; same && i < run.states.size(); ++i)
        same = run.states[i].asked.name == result.states[i].name && run.states[i].status == result.states[i].status &&
               run.states[i].reason == result.states[i].reason;
    if (!same) throw FileError(folder, "holds result.h5 and summary.json of two different runs; solve the case again");
}

void read_fields(const StoredRun& run, const std::filesystem::path& path, TransitionResult& result) {
    const Hdf5Silence silence;
    const Hdf5Source root(path);
    result.rolls = read_stored_rolls(root, path);
    const Hdf5Source states = root.group("states");
    for (size_t i = 0; i < result.states.size(); ++i) {
        StateResult& state = result.states[i];
        if (!converged(state)) continue;
        read_stored_surface(states.group(std::to_string(i + 1)), path, state);
        state.shape = run.states[i].shape;
        state.mode_symmetric = run.states[i].mode_symmetric;
        state.mode_antisymmetric = run.states[i].mode_antisymmetric;
    }
}

}  // namespace

StoredResult read_result_folder(const std::filesystem::path& folder) {
    if (!std::filesystem::is_directory(folder)) throw FileError(folder, "is no folder");
    const std::filesystem::path database = folder / "result.h5";
    if (!std::filesystem::exists(database)) throw FileError(folder, "holds no result.h5 of swale solve");
    const StoredRun run = read_result_database(database);
    StoredSummary summary = read_summary(folder / "summary.json");
    refuse_mixture(run, summary.result, folder);
    StoredResult stored{{}, run.swale_version, run.written_at};
    stored.record.case_file = run.case_file;
    stored.record.case_text = run.case_text;
    stored.record.transition = parse_case(run.case_text, run.case_file, run.catalogue_text);
    if (run.catalogue_text) stored.record.catalogue = CatalogueFile{"catalogue.toml", *run.catalogue_text};
    stored.record.result = std::move(summary.result);
    read_fields(run, database, stored.record.result);
    return stored;
}

}  // namespace swale
