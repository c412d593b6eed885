#pragma once

#include <string>

namespace swale {

/// Characters that turn the direction of what follows by their codes, "[U+202E]": else a name could turn round the numbers
/// behind it. They are U+200E, U+200F, U+202A to U+202E and U+2066 to U+2069.
std::string with_visible_directions(const std::string& text);

/// Text with what markup would take for its own made harmless; control characters become blanks, those that
/// turn the direction of writing their codes in brackets.
std::string escaped(const std::string& text);

}  // namespace swale
