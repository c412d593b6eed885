#include "solver/transition/sag.h"

#include "materials/gravity.h"
#include "mesh/idler_set.h"
#include "solver/transition/belt_bulk.h"

#include <algorithm>

namespace swale {

namespace {

double longest_span(const TransitionLayout& layout) {
    double longest = layout.trough.spacing, x = 0;
    for (const IdlerSet& set : idler_sets(layout, 1)) {
        longest = std::max(longest, set.x - x);
        x = set.x;
    }
    return longest;
}

}  // namespace

double sag_over_span(const TransitionCase& transition, const TensionState& state) {
    if (!state.total) return 0;
    const double mass = transition.belt.section.mass * transition.belt.width + (state.loaded ? bulk_mass(transition) : 0);
    const double weight = mass * gravity;
    return weight * longest_span(transition.layout) / (8 * *state.total);
}

double hanging_length(const TransitionCase& transition, const TensionState& state) {
    const double sag = sag_over_span(transition, state);
    return 8.0 / 3 * sag * sag * longest_span(transition.layout);
}

}  // namespace swale
