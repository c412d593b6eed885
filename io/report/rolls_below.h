#pragma once

#include "solver/transition_case.h"

#include <string>
#include <vector>

namespace swale {

/// What of the flat belt a roll of a full set can carry: y from and to [mm].
struct RollBelow {
    std::string name;  ///< "centre", "wing +y"
    double from = 0, to = 0;
};

/// From the centre outwards, cut off at the edges; empty where the trough is held.
std::vector<RollBelow> rolls_below(const TransitionCase& transition);

}  // namespace swale
