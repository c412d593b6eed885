#pragma once

#include "solver/transition/belt_model.h"

#include <optional>

namespace swale {

/// Lowest eigenvalues of the tangent by their parity in y, unit-density (area) weighting [N/mm^3]; absent if not found.
struct BeltStability {
    std::optional<double> symmetric, antisymmetric;
};

BeltStability stability_of_belt(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                                const ControlPoints& points);

}  // namespace swale
