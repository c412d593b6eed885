#include "solver/criteria/criteria.h"

#include <algorithm>
#include <limits>

namespace swale {

// The first full set is seated if each of its rolls carries: the least share of what a roll of its kind carries in the running
// trough of the same belt. No share is published. Without value where the trough is not endless.
Judgement judge_first_set_seated(const TransitionCase&, const StateResult& state) {
    Judgement judgement{"set 1 roll force / running trough", state.name, {}, {}, "", {}, {}, false, "", {}, {}};
    if (!state.running_trough) return judgement;
    double least = std::numeric_limits<double>::infinity();
    for (const SupportForce& support : state.supports) {
        if (!support.name.starts_with("set 1 ")) continue;
        const bool wing = support.name.starts_with("set 1 wing");
        const double of_trough = wing ? state.running_trough->wing_force : state.running_trough->centre_force;
        const double share = support.force.norm() / of_trough;
        if (!(of_trough > 0) || share >= least) continue;
        least = share;
        judgement.value = share;
        judgement.where = support.name;
    }
    return judgement;
}

}  // namespace swale
