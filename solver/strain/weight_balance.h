#pragma once

#include "solver/transition/belt_model.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// The bulk that the model bears, and whether the forces in `result` (supports, far end) hold it up together with the belt.
/// Empty without bulk.
std::optional<BulkResult> weight_balance(const TransitionCase& transition, const BeltModel& model, const StateResult& result);

}  // namespace swale
