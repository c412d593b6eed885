#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

// Largest N11 on the edges over the rated tension per width. Without a rating nothing is judged.
Judgement judge_edge_tension(const TransitionCase& transition, const StateResult& state) {
    if (!transition.belt.rated_tension) {
        Judgement open = against_upper_limit("edge tension / rated tension", state, state.edge_tension_max, "", {});
        open.value.reset();
        open.source = "not judged: the belt has no rated tension";
        return open;
    }
    Reading ratio = state.edge_tension_max;
    for (std::optional<double>* error : {&ratio.error, &ratio.far_end_error})
        if (*error) **error /= *transition.belt.rated_tension;
    ratio.value /= *transition.belt.rated_tension;
    return against_upper_limit("edge tension / rated tension", state, ratio, "", transition.limits.edge_tension);
}

}  // namespace swale
