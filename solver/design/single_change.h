#pragma once

#include "solver/sensitivity.h"
#include "solver/sizing.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// The pulley moved along the conveyor, all sets staying where they are; its value is the distance.
Parameter pulley_place(const TransitionCase& transition);

/// What can be changed at a standing transition: the pulley's place and height, those of every station and its angle, the
/// height of the first full set if it was measured, and the tension of a state.
std::vector<Parameter> parameters_of_standing(const TransitionCase& transition, const TensionState& state);

/// One thing changed, in print and as a case.
struct SingleChange {
    std::string name;
    TransitionCase transition;
};

/// `levers`: the sign of their slopes says to which side. Changes that the bounds leave no room for, or that rolls and pulley
/// have no room for, are left out.
std::vector<SingleChange> single_changes(const TransitionCase& transition, const SizingBounds& bounds,
                                         const std::vector<Lever>& levers);

}  // namespace swale
