#pragma once

#include "io/run_record.h"

#include <nlohmann/json.hpp>

namespace swale {

/// What the 3-D view and the interactive map need: states with their surfaces and fields, rolls, sets, junctions. A symmetric
/// model gives the half y >= 0. Surfaces finer than a page can carry are thinned: every point given is one of the solution's.
nlohmann::ordered_json belt_view(const RunRecord& record);

}  // namespace swale
