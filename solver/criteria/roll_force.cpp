#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// Of the modelled sets' rolls; held lines, which have no lift-off, are none.
std::string most_loaded_roll(const StateResult& state) {
    const SupportForce* most = nullptr;
    for (const SupportForce& support : state.supports)
        if (support.name != "pulley" && support.lift_off && (!most || support.force.norm() > most->force.norm()))
            most = &support;
    return most ? most->name : "";
}

}  // namespace

// Of an endless trough the rolls of its running bays count too: they bear most if the belt lies off the first sets.
Judgement judge_roll_force(const TransitionCase& transition, const StateResult& state) {
    Judgement judgement = against_upper_limit("roll force", state, state.roll_force_max, "N", transition.limits.roll_force);
    judgement.where = most_loaded_roll(state);
    if (std::isnan(state.roll_force_max.value)) {  // no rolls
        judgement.value.reset();
        judgement.passed.reset();
        return judgement;
    }
    double in_trough = 0;
    if (state.running_trough)
        for (const auto& [roll, force] : state.running_trough->roll_forces) in_trough = std::max(in_trough, force);
    if (in_trough <= state.roll_force_max.value) return judgement;
    Reading reading = state.roll_force_max;
    reading.value = in_trough;
    judgement = against_upper_limit("roll force", state, reading, "N", transition.limits.roll_force);
    judgement.where = "running trough";
    judgement.x.reset();
    judgement.y.reset();
    return judgement;
}

}  // namespace swale
