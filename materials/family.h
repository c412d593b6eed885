#pragma once

#include "materials/belt.h"
#include "materials/designation.h"

#include <functional>
#include <string>
#include <vector>

namespace swale {

/// A family of belts behind one carcass code. A new family is a file that makes one of these and a line in catalogue.cpp.
struct BeltFamily {
    std::string code;   ///< "EP"
    std::string title;  ///< "plies with polyester warp and polyamide weft"
    std::string form;   ///< "EP strength/plies top+bottom"
    Carcass carcass = Carcass::textile;
    std::vector<CarcassCode> carcasses;  ///< all that are known, weakest first
    double cover_min = 0;                ///< of either cover [mm]
    double cover_max = 0;
    std::function<DataSheet(const Designation&)> data_sheet;  ///< for a designation of this family that passed `check`
};

/// Whether the letters of a family were probably meant: swapped, or one too many or too few.
bool is_near(const std::string& code, const std::string& known);

/// Throws BadDesignation unless the carcass is one of the family's and both covers are in range; names the nearest known.
void check(const Designation& designation, const BeltFamily& family);

}  // namespace swale
