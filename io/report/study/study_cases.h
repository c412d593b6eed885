#pragma once

#include "io/study/study_record.h"

#include <string>

namespace swale {

/// Every case with its verdict: of a grid a table of rows and columns, otherwise a list; a large list is cut to the cases
/// nearest to a limit, and says so.
std::string study_cases_section(const StudyRecord& record);

/// Cases without a solution, each with its reason.
std::string failed_cases_section(const StudyRecord& record);

}  // namespace swale
