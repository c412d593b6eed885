#pragma once

#include "materials/belt.h"

#include <string>

namespace swale {

/// The belt's sheet as it is once its "thickness" or "A11" has that value in internal units: what its construction makes of it
/// follows, the other data that are given stay. Of a thickness mass, A66, D and underside follow, since the covers are those of
/// the designation and the carcass takes up what differs; of a modulus the D11 of plies. The D12 and D66 of a given D22 keep
/// their shares of sqrt(D11 D22). A belt without a construction has the value put in its place. Throws std::invalid_argument if
/// the carcass does not fit into the thickness.
DataSheet following(const Belt& belt, const std::string& name, double value);

}  // namespace swale
