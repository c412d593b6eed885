#pragma once

#include "materials/belt.h"

#include <string>
#include <vector>

namespace swale {

enum class End { low, high };

/// Names of the belt's data that have a range, in the order of the sheet.
std::vector<std::string> uncertain_data(const Belt& belt);

/// The belt with one of its uncertain data at an end of its range. What follows from it in the construction follows as it would
/// from a measured value: of the thickness mass, A66, D and underside, of A11 the D11 of plies. A12 follows A22; D12 and D66
/// keep their shares of sqrt(D11 D22), their ranges too; all else stays. Throws std::invalid_argument if the datum
/// has no range, or if the section would not be positive definite (no belt of the catalogue, but a measured modulus far off can
/// do it).
Belt at_end(const Belt& belt, const std::string& name, End end);

}  // namespace swale
