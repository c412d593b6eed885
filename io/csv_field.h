#pragma once

#include <string>

namespace swale {

/// RFC 4180: a field with a comma, a quote or a line break stands in quotes, its own quotes doubled.
inline std::string csv_field(const std::string& field) {
    if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
    std::string inside;
    for (const char letter : field) inside += letter == '"' ? "\"\"" : std::string(1, letter);
    return '"' + inside + '"';
}

}  // namespace swale
