#pragma once

#include "materials/belt.h"
#include "materials/designation.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What was measured of a belt and other numbers of its construction follow.
struct Measured {
    std::optional<double> thickness = {};  ///< with covers [mm]
    std::optional<double> modulus = {};    ///< A11 [N/mm]
};

/// A family of belts behind one carcass code. A new family is a file that makes one of these and a line in catalogue.cpp.
struct BeltFamily {
    std::string code;   ///< "EP"
    std::string title;  ///< "plies with polyester warp and polyamide weft"
    std::string form;   ///< "EP strength/plies top+bottom"
    Carcass carcass = Carcass::textile;
    std::vector<CarcassCode> carcasses;  ///< all that are known, weakest first
    double cover_min = 0;                ///< of either cover [mm]
    double cover_max = 0;
    /// For a designation of this family that passed `check`: `thickness` and `A11` themselves as the catalogue has them, all
    /// else as it follows from what was measured. Throws std::invalid_argument if the carcass does not fit into that thickness.
    std::function<DataSheet(const Designation&, const Measured&)> data_sheet;
};

/// Whether the letters of a family were probably meant: swapped, or one too many or too few.
bool is_near(const std::string& code, const std::string& known);

/// Throws BadDesignation unless the carcass is one of the family's and both covers are in range; names the nearest known.
void check(const Designation& designation, const BeltFamily& family);

/// What is left for the carcass [mm] of a belt's thickness under these covers. Throws std::invalid_argument if nothing is.
double carcass_within(double thickness, double covers);

}  // namespace swale
