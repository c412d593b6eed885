#pragma once

#include "io/input_error.h"

#include <string>
#include <vector>

namespace swale {

/// A case file with one mistake: a sound one whose `line` is replaced by `text` (several lines if need be), and the mistake
/// that must be found in it and nothing else.
struct BadCase {
    int line;
    const char* text;
    int line_of_mistake;
    const char* key;
    const char* phrase;  ///< in the message
};

/// A sound case on rolls, 25 lines, and a sound held strip, 27 lines.
extern const std::string sound_case;
extern const std::string sound_held_case;

extern const std::vector<BadCase> bad_cases;
extern const std::vector<BadCase> bad_held_cases;

std::string with_line(const std::string& text, int line, const std::string& replacement);

/// Reads a sound text with the mistake in it and checks that the first mistake found has its line, key and phrase and says what
/// is allowed. All that were found.
std::vector<InputError> check_named(const std::string& sound, const BadCase& bad);

/// The mistakes that reading the text finds.
std::vector<InputError> mistakes_of(const std::string& text);

}  // namespace swale
