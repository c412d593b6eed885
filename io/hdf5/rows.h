#pragma once

#include "io/hdf5/writer.h"

#include <Eigen/Core>

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// NaN stands for "not judged, not defined, not estimated".
inline double number_or_nan(const std::optional<double>& value) {
    return value.value_or(std::numeric_limits<double>::quiet_NaN());
}

/// `value` of every row, to be written as a column.
template <class Row, class Value>
auto column_of(const std::vector<Row>& rows, Value value) {
    std::vector<decltype(value(rows.front()))> values;
    values.reserve(rows.size());
    for (const Row& row : rows) values.push_back(value(row));
    return values;
}

/// A data set with one number a row.
template <class Row, class Value>
void write_numbers(const Hdf5Group& group, const char* name, const char* unit, const std::vector<Row>& rows, Value value) {
    group.numbers(name, unit, {rows.size()}, column_of(rows, [&](const Row& row) { return double{value(row)}; }));
}

/// A data set with one text a row.
template <class Row, class Value>
void write_texts(const Hdf5Group& group, const char* name, const std::vector<Row>& rows, Value value) {
    group.texts(name, column_of(rows, [&](const Row& row) { return std::string(value(row)); }));
}

/// A data set (rows, 3) with one vector a row.
template <class Row, class Value>
void write_vectors(const Hdf5Group& group, const char* name, const char* unit, const std::vector<Row>& rows, Value value) {
    std::vector<double> values;
    for (const Row& row : rows) {
        const Eigen::Vector3d vector = value(row);
        values.insert(values.end(), vector.data(), vector.data() + 3);
    }
    group.numbers(name, unit, {rows.size(), 3}, values);
}

}  // namespace swale
