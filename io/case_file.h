#pragma once

#include "solver/transition_case.h"

#include <filesystem>
#include <string>

namespace swale {

/// Reads a case file. Throws InputErrors with all mistakes of the file; FileError if it can't be read.
TransitionCase read_case(const std::filesystem::path& path);

/// The same from its text; `file` is its name in messages.
TransitionCase parse_case(const std::string& text, const std::string& file);

}  // namespace swale
