#pragma once

#include "solver/range_study.h"

#include <string>

namespace swale {

/// The answer of `swale ranges`: the uncertain numbers ranked by their effect, what to have measured first, which limits are
/// exceeded at which end, and runs without a solution.
std::string ranges_section(const TransitionCase& transition, const RangeStudy& study);

}  // namespace swale
