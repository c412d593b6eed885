#pragma once

#include <string>

namespace swale {

/// Version of the program, as the build file has it: "0.1.0".
std::string version();

}  // namespace swale
