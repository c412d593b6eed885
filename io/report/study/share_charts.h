#pragma once

#include "io/picture/line_chart.h"
#include "io/study/study_record.h"

#include <vector>

namespace swale {

/// Share used of the limit that binds, over the first axis of numbers, a line for each value of the next axis; at most six
/// charts, none where no two solved cases differ in that axis alone.
std::vector<LineChart> share_charts(const StudyRecord& record);

}  // namespace swale
