#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

Judgement judge_edge_strain(const TransitionCase& transition, const StateResult& state) {
    return against_upper_limit("edge strain", state, state.edge_strain_max, "1", transition.limits.edge_strain);
}

}  // namespace swale
