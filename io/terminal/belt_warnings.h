#pragma once

#include "io/terminal/plain_text.h"
#include "materials/belt.h"

namespace swale {

/// What in the belt's data contradicts itself, a paragraph each; empty without any.
inline std::string belt_warnings(const Belt& belt) {
    std::string text;
    for (const std::string& warning : belt.warnings) text += "  - " + wrapped("warning: " + warning, 4);
    return text;
}

}  // namespace swale
