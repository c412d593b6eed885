#pragma once

#include "solver/transition/belt_model.h"

#include <optional>

namespace swale {

/// Lowest eigenvalues of the tangent by their parity in y, unit-density (area) weighting [N/mm^3]; absent if not found.
struct BeltStability {
    std::optional<double> symmetric, antisymmetric;
    bool trough_tips = false;  ///< the trough behind the model is not stable under antisymmetric modes: they are of a belt that
                               ///< ends in a symmetry plane behind the last set
    /// Their modes: motion of the model's control points, of any length; empty if not found.
    ControlPoints symmetric_motion = {}, antisymmetric_motion = {};
};

BeltStability stability_of_belt(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                                const ControlPoints& points);

/// An eigenvalue is below a tenth of (T / W) (pi / L)^2, that of a taut strip as long as the transition: on a coarse grid its
/// sign is in doubt. Also if one was not found.
bool near_instability(const TransitionCase& transition, const TensionState& state, const BeltStability& lowest);

}  // namespace swale
