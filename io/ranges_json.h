#pragma once

#include "solver/range_study.h"

#include <string>

namespace swale {

/// ranges.json; `io/ranges.schema.json` describes it.
std::string ranges_json(const TransitionCase& transition, const RangeStudy& study);

}  // namespace swale
