#pragma once

#include <string>

namespace swale {

/// 1, "running full" -> "state-1-running-full": letters, digits and hyphens, for every file system and inside XML.
std::string state_file_stem(size_t number, const std::string& name);

}  // namespace swale
