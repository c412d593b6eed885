#pragma once

#include "solver/sizing.h"

#include <string>
#include <vector>

namespace swale {

/// What was found, in a sentence.
std::string sizing_headline(const Sizing& sizing, const SizingBounds& bounds);

/// Arrangements, what moves the answer, and what was tried, as tables.
std::string sizing_tables(const Sizing& sizing, const SizingBounds& bounds);

/// What moves the headroom that binds, to first order; under a blank line, empty if nothing is known.
std::string levers_text(const std::vector<Lever>& levers);

}  // namespace swale
