#pragma once

#include "tests/verification/reference.h"

#include <map>
#include <string>
#include <vector>

namespace swale::verification {

/// A table of reference values in `data/`, each in its one home: comment lines `# source: ...` and `# kind: ...`, a line of
/// column names, then rows.
struct ReferenceTable {
    std::string source, kind;
    std::vector<std::map<std::string, std::string>> rows;  ///< cells by column name

    /// Numbers of a column; rows with an empty cell are left out. Throws std::out_of_range for a column that is not there.
    std::vector<double> numbers(const std::string& column) const;
    /// The rows in which a column has this text.
    ReferenceTable where(const std::string& column, const std::string& text) const;
};

/// A cell of a row as a number. Throws std::out_of_range for a column that is not there.
double number(const std::map<std::string, std::string>& row, const std::string& column);

/// Throws std::runtime_error with the file's name if it can't be read.
ReferenceTable reference_table(const std::string& file);
/// The same of a file anywhere.
ReferenceTable reference_table_at(const std::string& path);

/// A length out of a published table.
Reference published(const ReferenceTable& table, double value, const std::string& conditions, double tolerance,
                    const std::string& why);

}  // namespace swale::verification
