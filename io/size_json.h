#pragma once

#include "solver/sizing.h"

#include <string>

namespace swale {

/// sizing.json: what was found, what else was looked at, what was tried, what moves it. Angles in deg, lengths in mm.
std::string size_json(const Sizing& sizing, const SizingBounds& bounds, const std::string& title);

/// "distance", "lift", "idlers", "all".
std::string aim_name(SizingAim aim);

}  // namespace swale
