#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

#include <algorithm>

namespace swale {

// The first full set is seated if the belt touches its centre roll.
Judgement judge_lift_off(const TransitionCase& transition, const StateResult& state) {
    const auto first = std::find_if(state.supports.begin(), state.supports.end(),
                                    [](const SupportForce& support) { return support.name == "set 1 centre"; });
    const bool known = first != state.supports.end() && first->lift_off;
    const Reading clearance{known ? *first->lift_off : 0, {}, {}, transition.layout.distance, 0};
    Judgement judgement =
        against_upper_limit("lift-off at set 1", state, clearance, "mm", known ? transition.limits.lift_off : std::nullopt);
    if (!known) judgement.value.reset();
    return judgement;
}

}  // namespace swale
