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
std::vector<TextRow> lever_rows(const std::vector<Lever>& levers);

/// What the search took, in a line.
std::string sizing_effort(const Sizing& sizing);
/// What moves the headroom that binds, to first order; under a blank line, empty if nothing is known.
std::string levers_text(const std::vector<Lever>& levers);

}  // namespace swale
