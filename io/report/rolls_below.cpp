#include "io/report/rolls_below.h"

#include "mesh/idler_set.h"

#include <algorithm>

namespace swale {

std::vector<RollBelow> rolls_below(const TransitionCase& transition) {
    const TransitionLayout& layout = transition.layout;
    const double edge = layout.belt_width / 2;
    std::vector<RollBelow> rolls;
    const std::vector<IdlerSet> sets = idler_sets(layout, 1);
    if (sets.empty() || sets.back().support == Support::held) return rolls;
    for (const SetRoll& roll : rolls_of(layout, sets.back(), transition.belt.section.underside)) {
        const double begin = roll.side == 0 ? -roll.roll.half_length : roll.facet.begin + layout.trough.roll_gap / 2;
        const double end = std::min(begin + 2 * roll.roll.half_length, edge);
        rolls.push_back(roll.side < 0 ? RollBelow{roll.name, -end, -begin} : RollBelow{roll.name, begin, end});
    }
    return rolls;
}

}  // namespace swale
