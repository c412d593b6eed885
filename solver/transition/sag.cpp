#include "solver/transition/sag.h"

#include "mesh/idler_set.h"
#include "solver/transition/gravity.h"

#include <algorithm>

namespace swale {

double sag_over_span(const TransitionCase& transition, const TensionState& state) {
    if (!state.total) return 0;
    double longest = transition.layout.trough.spacing, x = 0;
    for (const IdlerSet& set : idler_sets(transition.layout, 1)) {
        longest = std::max(longest, set.x - x);
        x = set.x;
    }
    const double weight = transition.belt.section.mass * gravity * transition.belt.width;
    return weight * longest / (8 * *state.total);
}

}  // namespace swale
