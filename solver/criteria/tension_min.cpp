#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

// The belt must pull everywhere: the lowest N11 is not below the limit, as a rule zero, of which no share can be stated.
Judgement judge_tension_min(const TransitionCase& transition, const StateResult& state) {
    const Reading& lowest = state.tension_min;
    Judgement judgement{"lowest tension", state.name, lowest.value, {}, "N/mm", {}, {}, false, "", lowest.x, lowest.y};
    judgement.error = whole_error(lowest);
    judgement.at_least = true;
    if (const auto& limit = transition.limits.tension_min) {
        judgement.limit = limit->value;
        judgement.source = limit->source;
        judgement.advisory = limit->advisory;
        if (!limit->advisory) judgement.passed = lowest.value >= limit->value;
    }
    return judgement;
}

}  // namespace swale
