#include "solver/criteria/criteria.h"

#include <string>

namespace swale {

const std::vector<Criterion>& all_criteria() {
    static const std::vector<Criterion> criteria{judge_edge_tension,
                                                 judge_tension_min,
                                                 judge_edge_strain,
                                                 judge_symmetric_wrinkling,
                                                 judge_antisymmetric_wrinkling,
                                                 judge_roll_force,
                                                 judge_junction_strain,
                                                 judge_junction_radius,
                                                 judge_free_span,
                                                 judge_lift_off,
                                                 judge_first_set_seated,
                                                 judge_wing_line_force,
                                                 judge_junction_beside_trough,
                                                 judge_line_force_beside_trough};
    return criteria;
}

namespace {

// The state with the readings of another shape of its belt; what only the reported shape has is left out.
StateResult in_other_shape(const StateResult& state, std::size_t k) {
    StateResult other;
    static_cast<Readings&>(other) = state.others[k];
    other.eigenvalue_symmetric = state.others[k].eigenvalue_symmetric;
    other.eigenvalue_antisymmetric = state.others[k].eigenvalue_antisymmetric;
    other.name = state.name + ", other shape " + std::to_string(k + 1);
    other.status = state.status;
    return other;
}

// The case with the limits that hold in one of its states.
TransitionCase as_judged_in(const TensionState& state, TransitionCase transition) {
    transition.limits = transition.limits_in(state);
    return transition;
}

// What no reading's error stands for has its own.
Judgement with_error(Judgement judgement, const StateResult& state) {
    const auto error = state.criterion_errors.find(judgement.name);
    if (judgement.value && !judgement.error && error != state.criterion_errors.end()) judgement.error = error->second;
    return judgement;
}

std::vector<Judgement> judged(const TransitionCase& as_judged, const StateResult& state) {
    std::vector<Judgement> judgements;
    for (const Criterion criterion : all_criteria()) judgements.push_back(with_error(criterion(as_judged, state), state));
    return judgements;
}

}  // namespace

std::vector<Judgement> judge_state(const TransitionCase& transition, const TensionState& state, const StateResult& result) {
    return judged(as_judged_in(state, transition), result);
}

std::vector<Judgement> judge(const TransitionCase& transition, const std::vector<StateResult>& states) {
    std::vector<Judgement> judgements;
    const auto add = [&](const std::vector<Judgement>& more) { judgements.insert(judgements.end(), more.begin(), more.end()); };
    for (std::size_t i = 0; i < states.size(); ++i) {
        const StateResult& state = states[i];
        if (state.status != SolveStatus::converged) continue;
        const TransitionCase as_judged = as_judged_in(transition.states.at(i), transition);
        add(judged(as_judged, state));
        for (std::size_t k = 0; k < state.others.size(); ++k) add(judged(as_judged, in_other_shape(state, k)));
    }
    return judgements;
}

}  // namespace swale
