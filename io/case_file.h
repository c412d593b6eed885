#pragma once

#include "solver/transition_case.h"

#include <filesystem>
#include <optional>
#include <string>

namespace swale {

/// Reads a case file. Throws InputErrors with all mistakes of the file; FileError if it can't be read.
TransitionCase read_case(const std::filesystem::path& path);

/// The same from its text; `file` is its name in messages. `catalogue`: the text of the catalogue that the case names, where
/// it was stored with the case; else it is read from beside `file`.
TransitionCase parse_case(const std::string& text, const std::string& file,
                          const std::optional<std::string>& catalogue = std::nullopt);

}  // namespace swale
