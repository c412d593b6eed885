#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"

#include <optional>

namespace swale {

/// Reads [survey], which says where the sets of a standing transition were found: the layout with the measured sets and pulley
/// height in place of the drawn ones. Sets that are not measured stand as drawn. Empty if the file has no survey, or a mistake
/// in it.
std::optional<TransitionLayout> read_survey(CaseTable& file, const TransitionLayout& drawn);

}  // namespace swale
