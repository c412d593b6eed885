#pragma once

#include "io/terminal/text_table.h"
#include "solver/sizing.h"

#include <string>
#include <vector>

namespace swale {

/// What was found, in a sentence.
std::string sizing_headline(const Sizing& sizing, const SizingBounds& bounds);

/// Arrangements, what moves the answer, and what was tried, as tables.
std::string sizing_tables(const Sizing& sizing, const SizingBounds& bounds);

/// The rows of these tables, the first of each its head; no levers: empty.
std::vector<TextRow> sizing_arrangement_rows(const Sizing& sizing);
std::vector<TextRow> sizing_history_rows(const Sizing& sizing);
std::vector<TextRow> sizing_lever_rows(const Sizing& sizing);

/// What the search took, in a line.
std::string sizing_effort(const Sizing& sizing);

}  // namespace swale
