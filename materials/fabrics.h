#pragma once

#include "materials/textile.h"

#include <string>
#include <vector>

namespace swale {

/// Every textile carcass of the catalogue. Letters: warp then weft, E polyester, P polyamide, N nylon (the same polyamide), C
/// cotton, D aramid: DIN 22102, from memory (fairly sure).
const std::vector<Fabric>& fabrics();

/// Throws std::out_of_range if there is none of that code.
const Fabric& fabric(const std::string& code);

}  // namespace swale
