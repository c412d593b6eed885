#pragma once

#include <string>
#include <vector>

namespace swale {

using TextRow = std::vector<std::string>;

/// Rows in columns as wide as they must be, two spaces apart and two from the left. One letter of `alignment` a column: 'l' or
/// 'r'; its last letter holds for all further columns.
std::string text_table(const std::vector<TextRow>& rows, const std::string& alignment);

/// Length of the longest line.
int widest_line(const std::string& text);

}  // namespace swale
