#include "solver/criteria/criteria.h"

namespace swale {

const std::vector<Criterion>& all_criteria() {
    static const std::vector<Criterion> criteria{judge_edge_tension,    judge_tension_min, judge_edge_strain,
                                                 judge_junction_strain, judge_lift_off,    judge_wing_line_force};
    return criteria;
}

std::vector<Judgement> judge(const TransitionCase& transition, const std::vector<StateResult>& states) {
    std::vector<Judgement> judgements;
    for (const StateResult& state : states)
        if (state.status == SolveStatus::converged)
            for (const Criterion criterion : all_criteria()) judgements.push_back(criterion(transition, state));
    return judgements;
}

}  // namespace swale
