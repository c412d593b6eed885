#pragma once

#include "io/hdf5/reader.h"
#include "solver/transition_result.h"

namespace swale {

/// What a state's group holds of the belt's surface, its sections and the rows along it; of these as much as their tables have.
/// Throws FileError where columns don't fit each other.
void read_stored_surface(const Hdf5Source& state, const std::filesystem::path& path, StateResult& result);

/// The rolls of the model.
std::vector<NamedRoll> read_stored_rolls(const Hdf5Source& root, const std::filesystem::path& path);

}  // namespace swale
