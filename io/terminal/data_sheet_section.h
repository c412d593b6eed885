#pragma once

#include "materials/origin.h"

#include <string>

namespace swale {

/// The numbers of a belt with their ranges and grades in a table, then where each of them comes from.
std::string data_sheet_section(const DataSheet& sheet);

}  // namespace swale
