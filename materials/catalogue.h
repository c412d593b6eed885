#pragma once

#include "materials/family.h"

#include <string>
#include <vector>

namespace swale {

/// All families of the catalogue with their known carcasses.
const std::vector<BeltFamily>& belt_families();

/// The family of a designation. Throws BadDesignation if its letters name none.
const BeltFamily& belt_family(const Designation& designation);

/// The belt behind a trade designation such as "EP 800/4 6+3" or "ST 1600 8+6", `width` in mm; its data sheet lists every
/// number with its origin. Throws BadDesignation; std::invalid_argument if the width is not positive.
Belt belt_from_designation(const std::string& text, double width);

}  // namespace swale
