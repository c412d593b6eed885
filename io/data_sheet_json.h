#pragma once

#include "materials/origin.h"

#include <nlohmann/json.hpp>

namespace swale {

/// Name, value, unit, grade and source of every number of a belt; its range, null where it has none.
nlohmann::ordered_json data_sheet_json(const DataSheet& sheet);

}  // namespace swale
