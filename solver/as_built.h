#pragma once

#include "solver/sizing.h"

#include <vector>

namespace swale {

/// How a standing transition fares as it was measured, beside the one that was drawn, and what single changes do to it.
struct AsBuilt {
    Arrangement measured;              ///< the case as surveyed
    Arrangement drawn;                 ///< the case as it was before the survey
    std::vector<Arrangement> changes;  ///< of the measured one, each solved, the one that leaves most first; it is solved whole
    std::vector<Lever> levers;         ///< of what binds in the measured one, to first order
    TransitionResult result;           ///< whole solution of the measured one
};

/// Solves a case with a survey as measured, as drawn, and as measured with one thing changed: the pulley moved along by a tenth
/// of the distance, the pulley raised or lowered by a quarter of the trough's depth, a set added in the middle of the longest
/// stretch before the first full set, at half of the angle and height between its neighbours, and the first full set put right
/// where it stands: height, level and angles as drawn. Pulley moves go to the side where
/// more is left to first order, within the bounds' distances and lifts. `surveyed.drawn` has to be there.
AsBuilt judge_as_built(const TransitionCase& surveyed, const SizingBounds& bounds, const ProgressListener& listener = {});

}  // namespace swale
