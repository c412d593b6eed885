#pragma once

#include "io/study/study_record.h"

#include <string>

namespace swale {

/// The cases of a full grid as tables: along the distance (or another axis of few values) by all others, each with the share
/// used of the limit that binds and a letter that names it. Empty if the study is no grid.
std::string case_grid(const StudyRecord& record);

}  // namespace swale
