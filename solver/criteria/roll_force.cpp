#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

#include <cmath>
#include <string>

namespace swale {

namespace {

// Of all sets; held lines, which have no lift-off, are none. Of an endless trough the rolls of its running bays count too.
std::string most_loaded_roll(const StateResult& state) {
    std::string most;
    double largest = -1;
    for (const SupportForce& support : state.supports)
        if (support.name != "pulley" && support.lift_off && support.force.norm() > largest) {
            most = support.name;
            largest = support.force.norm();
        }
    if (state.running_trough)
        for (const auto& [roll, force] : state.running_trough->roll_forces)
            if (force > largest) return "running trough";
    return most;
}

}  // namespace

Judgement judge_roll_force(const TransitionCase& transition, const StateResult& state) {
    Judgement judgement = against_upper_limit("roll force", state, state.roll_force_max, "N", transition.limits.roll_force);
    judgement.where = most_loaded_roll(state);
    if (std::isnan(state.roll_force_max.value)) {  // no rolls
        judgement.value.reset();
        judgement.passed.reset();
    }
    return judgement;
}

}  // namespace swale
