#include "solver/criteria/criteria.h"

#include <algorithm>
#include <limits>

namespace swale {

namespace {

const std::string first_set = "set 1 ";

}

// The first full set is seated if each of its rolls carries: the least share of what a roll of its kind carries in the running
// trough of the same belt. No share is published. Without value where the trough is not endless.
Judgement judge_first_set_seated(const TransitionCase&, const StateResult& state) {
    Judgement judgement{"set 1 roll force / running trough", state.name, {}, {}, "", {}, {}, false, "", {}, {}};
    if (!state.running_trough) return judgement;
    double least = std::numeric_limits<double>::infinity();
    for (const SupportForce& support : state.supports) {
        if (!support.name.starts_with(first_set)) continue;
        const auto in_trough = state.running_trough->roll_forces.find(support.name.substr(first_set.size()));
        if (in_trough == state.running_trough->roll_forces.end() || !(in_trough->second > 0)) continue;
        const double share = support.force.norm() / in_trough->second;
        if (share >= least) continue;
        least = share;
        judgement.value = share;
        judgement.where = support.name;
    }
    return judgement;
}

}  // namespace swale
