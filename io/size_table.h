#pragma once

#include "io/case_table.h"
#include "solver/sizing.h"
#include "solver/transition_case.h"

#include <string>
#include <vector>

namespace swale {

/// What is looked for as words, in the order of SizingAim.
const std::vector<std::string>& aim_words();

/// [size] of a case file: what `swale size` looks for and within what; absent keys give half to twelve belt widths, the pulley
/// from flush to half the trough's depth, up to two intermediate sets of any angle.
SizingBounds read_size_table(CaseTable table, const TransitionLayout& layout);

/// The same of a case that parses.
SizingBounds sizing_bounds(const std::string& case_text, const std::string& file, const TransitionCase& transition);

}  // namespace swale
