#pragma once

#include "io/run_record.h"
#include "io/terminal/text_table.h"

#include <string>
#include <vector>

namespace swale {

/// Where the extremes over all states lie and how well they are known, and why the edge stretches most. Empty without a
/// solution.
std::string places_section(const RunRecord& record);

/// The rows of its table, the first the head.
std::vector<TextRow> place_rows(const RunRecord& record);

/// Its last sentence; empty where the edge is not strained beyond the mean.
std::string why_edges_stretch(const RunRecord& record);

}  // namespace swale
