#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// Where the extremes over all states lie and how well they are known, and why the edge stretches most. Empty without a
/// solution.
std::string places_section(const RunRecord& record);

}  // namespace swale
