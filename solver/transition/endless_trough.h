#pragma once

#include "solver/transition/trough_beyond.h"

#include <memory>
#include <string>

namespace swale {

/// What every bay behind the modelled sets repeats, and what the joint to them feels.
struct EndlessTrough {
    TroughBay bay;
    JointStiffness joint;
};

/// An endless trough, or why there is none.
struct EndlessTroughOutcome {
    std::shared_ptr<const EndlessTrough> trough;
    NewtonOutcome outcome;  ///< of its periodic state
    std::string sentence;   ///< why there is none
};

/// Behind `sets` full sets of a belt with these knots along the centre line's path in space. `known`: that of the same state on
/// these knots, which then is the answer, or on others, which then is the start.
EndlessTroughOutcome endless_trough(const TransitionCase& transition, const TensionState& state, const Patch& patch_in_space,
                                    int sets, int gauss_points, const std::shared_ptr<const EndlessTrough>& known,
                                    NewtonTimes& times);

/// Unstretched length per length in space that a uniform strip under the state's tension would have.
double first_scale(const TransitionCase& transition, const TensionState& state);

}  // namespace swale
