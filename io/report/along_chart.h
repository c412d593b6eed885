#pragma once

#include "io/report/state_charts.h"

namespace swale {

/// Edge, junction and centre strain along the belt, with what the hand methods say of the state and the limit.
StateChart along_chart(const RunRecord& record, const StateResult& state);

}  // namespace swale
