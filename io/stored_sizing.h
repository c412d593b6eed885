#pragma once

#include "solver/sizing.h"

#include <filesystem>
#include <optional>

namespace swale {

/// The search of `swale size` as sizing.json keeps it: what the report and the terminal say of it. Of the arrangements' cases
/// it has the layouts alone, of the solution nothing.
struct StoredSizing {
    Sizing sizing;
    SizingBounds bounds;  ///< the aim alone
};

/// Reads `folder`/sizing.json, of the search that led to `sized`. Absent without such a file, or if it tells of another case.
/// Throws FileError for one that can't be read.
std::optional<StoredSizing> read_stored_sizing(const std::filesystem::path& folder, const TransitionCase& sized);

}  // namespace swale
