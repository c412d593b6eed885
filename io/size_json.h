#pragma once

#include "solver/as_built.h"
#include "solver/sizing.h"

#include <string>

namespace swale {

/// sizing.json: what was found, what else was looked at, what was tried, what moves it. Angles in deg, lengths in mm.
std::string size_json(const Sizing& sizing, const SizingBounds& bounds, const std::string& title);

/// as-built.json: a standing transition as measured, as drawn, and its single changes, best first.
std::string as_built_json(const AsBuilt& as_built, const std::string& title);

}  // namespace swale
