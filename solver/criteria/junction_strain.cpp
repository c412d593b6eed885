#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

Judgement judge_junction_strain(const TransitionCase& transition, const StateResult& state) {
    return against_upper_limit("junction bending strain", state, state.junction_bending_strain_max, "1",
                               transition.limits.junction_strain);
}

}  // namespace swale
