#pragma once

#include "solver/transition_result.h"

#include <filesystem>
#include <string>

namespace swale {

/// A result as summary.json tells it: states with readings, supports, notes and Newton records, criteria, sets, tension path;
/// no fields, no shapes. Throws FileError if the file can't be read or is no summary.
struct StoredSummary {
    TransitionResult result;
    std::string version;  ///< of the program that wrote it
};
StoredSummary read_summary(const std::filesystem::path& path);

}  // namespace swale
