#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

Judgement judge_wing_line_force(const TransitionCase&, const StateResult& state) {
    return against_upper_limit("wing line force", state, state.wing_line_force_max, "N/mm", {});
}

}  // namespace swale
