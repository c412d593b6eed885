#pragma once

#include "io/hdf5/writer.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace swale {

/// Where a column finds its value in a row: a JSON pointer, "/edge_strain_max/value". A column without a unit holds texts;
/// truth values are 1 and 0.
struct RecordColumn {
    std::string name;
    std::string pointer;
    std::string unit;
};

/// A group with one data set a column. What is not there in a row is NaN, or an empty text.
void write_table(const Hdf5Group& root, const std::string& name, const std::vector<RecordColumn>& columns,
                 const std::vector<nlohmann::ordered_json>& rows);

}  // namespace swale
