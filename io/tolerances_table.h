#pragma once

#include "io/case_table.h"
#include "solver/spread.h"

#include <string>

namespace swale {

/// [tolerances] of a case file: how nearly tension, stiffness and geometry are known, each to either side with 95 of 100
/// inside; `exceed`: how often a limit may be exceeded.
Tolerances read_tolerances(CaseTable table);

/// The same of a case that parses. Throws InputErrors if it has none.
Tolerances tolerances_of(const std::string& case_text, const std::string& file);

}  // namespace swale
