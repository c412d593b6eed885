#pragma once

#include "io/case_table.h"
#include "mesh/transition_layout.h"
#include "solver/transition_case.h"

#include <optional>

namespace swale {

/// Reads [load], the bulk on the belt; empty if the file has none.
std::optional<Bulk> read_load(CaseTable& file, const TransitionLayout& layout);

}  // namespace swale
