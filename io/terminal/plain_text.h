#pragma once

#include <string>

namespace swale {

/// Longest line of the answer.
inline constexpr int line_length = 100;

/// Without control characters, which could steer the terminal.
std::string printable(const std::string& text);

/// Number of characters of UTF-8 text.
int text_width(const std::string& text);

/// At most `width` characters; what is cut off shows as "..".
std::string shortened(const std::string& text, int width);

/// Broken at spaces into lines of at most `line_length`; the first stands behind a lead of `indent` characters that the caller
/// wrote, the others are indented by as many. Ends in a line break.
std::string wrapped(const std::string& text, int indent = 0);

/// With so many significant digits and no exponent: "0.372", "45000". "-" if it is not a number.
std::string significant(double value, int digits = 3);

}  // namespace swale
