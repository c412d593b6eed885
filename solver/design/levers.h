#pragma once

#include "solver/sizing.h"

#include <vector>

namespace swale {

/// What distance, lift, stations and the state's tension do to the headroom that is least, from the tangent of its state. Empty
/// where that state has no solution or no tangent, or nothing is judged.
std::vector<Lever> levers_of(const TransitionCase& transition, const TransitionResult& result);

}  // namespace swale
