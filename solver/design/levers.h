#pragma once

#include "solver/sensitivity.h"
#include "solver/sizing.h"

#include <functional>
#include <vector>

namespace swale {

/// What distance, lift, stations and the state's tension do to the headroom that is least, from the tangent of its state. Empty
/// where that state has no solution or no tangent, or nothing is judged.
std::vector<Lever> levers_of(const TransitionCase& transition, const TransitionResult& result);

/// The same of other parameters, the first of which is worth a distance.
using ParametersOf = std::function<std::vector<Parameter>(const TransitionCase&, const TensionState&)>;
std::vector<Lever> levers_of(const TransitionCase& transition, const TransitionResult& result, const ParametersOf& parameters);

}  // namespace swale
