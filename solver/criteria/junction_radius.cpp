#include "solver/criteria/criteria.h"
#include "solver/criteria/upper_limit.h"

namespace swale {

// Radius of the mid-surface where the junction bends most: the farther face's distance over its bending strain. None is
// published.
Judgement judge_junction_radius(const TransitionCase& transition, const StateResult& state) {
    const Reading& strain = state.junction_bending_strain_max;
    Judgement judgement{"junction radius", state.name, {}, {}, "mm", {}, {}, false, "", strain.x, strain.y};
    judgement.at_least = true;
    if (!(strain.value > 0)) return judgement;  // flat
    judgement.value = transition.belt.section.farther_face() / strain.value;
    if (const std::optional<double> error = whole_error(strain)) judgement.error = *judgement.value * *error / strain.value;
    return judgement;
}

}  // namespace swale
