#pragma once

#include "solver/sizing.h"

#include <string>

namespace swale {

/// What was found, in a sentence.
std::string sizing_headline(const Sizing& sizing, const SizingBounds& bounds);

/// Arrangements, what moves the answer, and what was tried, as tables.
std::string sizing_tables(const Sizing& sizing, const SizingBounds& bounds);

}  // namespace swale
