#pragma once

#include "solver/transition/belt_model.h"

#include <string>

namespace swale {

/// Empty if no part of the belt has passed through a roll; otherwise a sentence that names the roll with both numbers.
/// Equilibria inside or behind a roll are converged, stable and wrong. Looked at: indentation everywhere near each roll, and at
/// the roll's own section the side on which the belt lies.
std::string passage_through_rolls(const BeltModel& model, const ControlPoints& points, const Section& section);

}  // namespace swale
