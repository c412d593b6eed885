#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

#include <cmath>

namespace swale {

Judgement judge_wing_line_force(const TransitionCase&, const StateResult& state) {
    Judgement judgement = against_upper_limit("wing line force", state, state.wing_line_force_max, "N/mm", {});
    if (std::isnan(state.wing_line_force_max.value)) judgement.value.reset();  // no wing rolls
    return judgement;
}

}  // namespace swale
