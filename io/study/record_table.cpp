#include "io/study/record_table.h"

#include <limits>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

const Json* found(const Json& row, const std::string& pointer) {
    const Json::json_pointer place(pointer);
    return row.contains(place) ? &row.at(place) : nullptr;
}

double number_of(const Json* value) {
    if (value && value->is_boolean()) return value->get<bool>() ? 1 : 0;
    return value && value->is_number() ? value->get<double>() : std::numeric_limits<double>::quiet_NaN();
}

std::string text_of(const Json* value) {
    return value && value->is_string() ? value->get<std::string>() : "";
}

void write_column(const Hdf5Group& group, const RecordColumn& column, const std::vector<Json>& rows) {
    std::vector<double> numbers;
    std::vector<std::string> texts;
    for (const Json& row : rows)
        if (column.unit.empty())
            texts.push_back(text_of(found(row, column.pointer)));
        else
            numbers.push_back(number_of(found(row, column.pointer)));
    if (column.unit.empty())
        group.texts(column.name, texts);
    else
        group.numbers(column.name, column.unit, {rows.size()}, numbers);
}

}  // namespace

void write_table(const Hdf5Group& root, const std::string& name, const std::vector<RecordColumn>& columns,
                 const std::vector<Json>& rows) {
    const Hdf5Group group = root.group(name);
    for (const RecordColumn& column : columns) write_column(group, column, rows);
}

}  // namespace swale
