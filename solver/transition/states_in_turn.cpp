#include "solver/transition/state_solver.h"

// Many tensions of one transition, as a study has them: on one thread each is done sooner for what is known of the one before.

namespace swale {

std::vector<std::optional<StateResult>> StateSolver::solve_in_turn(const std::vector<TensionState>& states) {
    solve_coarse_in_turn(states);
    CarriedCorrection longer, fine;
    std::vector<std::optional<StateResult>> results;
    for (CoarseState& coarse : coarse_) {
        results.emplace_back();
        solve_nearer_end(coarse, &longer);
        if (wants_more_sets(coarse)) continue;
        climb_from(coarse, &fine);
        find_lowest(coarse);
        results.back() = finish(coarse);
    }
    return results;
}

void StateSolver::solve_coarse_in_turn(const std::vector<TensionState>& states) {
    coarse_.reserve(states.size());
    for (const TensionState& state : states) add_coarse(state);
    for (CoarseState& coarse : coarse_)
        if (slack(coarse)) look_for_others(coarse);
}

}  // namespace swale
