#include "tests/verification/reference_table.h"

#include <fstream>
#include <stdexcept>

namespace swale::verification {

namespace {

// Commas part the cells but inside quotes.
std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells{""};
    bool quoted = false;
    for (const char c : line) {
        if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            cells.emplace_back();
        else
            cells.back() += c;
    }
    return cells;
}

std::string after(const std::string& line, const std::string& label) {
    return line.starts_with(label) ? line.substr(label.size()) : "";
}

}  // namespace

std::vector<double> ReferenceTable::numbers(const std::string& column) const {
    std::vector<double> values;
    for (const auto& row : rows)
        if (const std::string& cell = row.at(column); !cell.empty()) values.push_back(std::stod(cell));
    return values;
}

ReferenceTable ReferenceTable::where(const std::string& column, const std::string& text) const {
    ReferenceTable chosen{source, kind, {}};
    for (const auto& row : rows)
        if (row.at(column) == text) chosen.rows.push_back(row);
    return chosen;
}

double number(const std::map<std::string, std::string>& row, const std::string& column) {
    return std::stod(row.at(column));
}

ReferenceTable reference_table(const std::string& file) {
    return reference_table_at(std::string(SWALE_SOURCE_DIR) + "/tests/verification/data/" + file);
}

ReferenceTable reference_table_at(const std::string& path) {
    std::ifstream stream(path);
    if (!stream) throw std::runtime_error("no reference table " + path);
    ReferenceTable table;
    std::vector<std::string> columns;
    for (std::string line; std::getline(stream, line);) {
        if (line.starts_with("#")) {
            table.source += after(line, "# source: ");
            table.kind += after(line, "# kind: ");
            continue;
        }
        const std::vector<std::string> cells = cells_of(line);
        if (columns.empty()) {
            columns = cells;
            continue;
        }
        auto& row = table.rows.emplace_back();
        for (std::size_t k = 0; k < columns.size(); ++k) row[columns[k]] = k < cells.size() ? cells[k] : "";
    }
    return table;
}

Reference published(const ReferenceTable& table, double value, const std::string& conditions, double tolerance,
                    const std::string& why) {
    return {value, "length", table.source, Kind::published_table, conditions, tolerance, why};
}

}  // namespace swale::verification
