#pragma once

#include "io/run_record.h"

#include <filesystem>
#include <string>

namespace swale {

/// A run as its result folder keeps it.
struct StoredResult {
    RunRecord record;
    std::string swale_version;  ///< that solved it
    std::string written_at;     ///< UTC
};

/// Reads back what `write_result_files` wrote: fields from result.h5, what is in words and single numbers from summary.json.
/// The rows along the belt hold what along.csv does. Of other equilibria the shapes are left out. Throws FileError if a file is
/// missing, none of ours, or of another run than the other; InputErrors if the case can't be read any more.
StoredResult read_result_folder(const std::filesystem::path& folder);

}  // namespace swale
