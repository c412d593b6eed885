#pragma once

#include "io/hdf5/writer.h"

#include <nlohmann/json.hpp>

namespace swale {

/// Writes the surfaces of one case, as its record holds them, into a group of its number.
void write_fields(const Hdf5Group& fields, int number, const nlohmann::ordered_json& states);

}  // namespace swale
