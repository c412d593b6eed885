#include "solver/criteria/criteria.h"

#include <cmath>

namespace swale {

namespace {

// A reading over what the running trough of the same belt has: no limit is published, but that is borne day by day. Without
// value where the trough is not endless.
Judgement beside_running_trough(const char* name, const StateResult& state, const Reading& reading, double of_trough) {
    Judgement judgement{name, state.name, {}, {}, "", {}, {}, false, "", {}, {}};
    if (!(of_trough > 0) || !std::isfinite(reading.value)) return judgement;
    judgement.value = reading.value / of_trough;
    judgement.x = reading.x;
    judgement.y = reading.y;
    return judgement;
}

}  // namespace

Judgement judge_junction_beside_trough(const TransitionCase&, const StateResult& state) {
    const double of_trough = state.running_trough ? state.running_trough->junction_bending_strain : 0;
    return beside_running_trough("junction strain / running trough", state, state.junction_bending_strain_max, of_trough);
}

Judgement judge_line_force_beside_trough(const TransitionCase&, const StateResult& state) {
    const double of_trough = state.running_trough ? state.running_trough->wing_line_force : 0;
    return beside_running_trough("wing line force / running trough", state, state.wing_line_force_max, of_trough);
}

}  // namespace swale
