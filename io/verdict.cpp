#include "io/verdict.h"

#include <algorithm>
#include <cmath>

namespace swale {
namespace {

struct Answer {
    const char* words;
    int exit_code;
};

Answer answer(const TransitionResult& result) {
    if (!std::all_of(result.states.begin(), result.states.end(), converged)) return {"not converged", 3};
    if (std::any_of(result.criteria.begin(), result.criteria.end(), over_a_limit)) return {"over a limit", 1};
    return {"within limits", 0};
}

}  // namespace

bool converged(const StateResult& state) {
    return state.status == SolveStatus::converged;
}

bool over_a_limit(const Judgement& judgement) {
    return !judgement.advisory && judgement.passed == false;
}

bool over_an_advisory_limit(const Judgement& judgement) {
    if (!judgement.advisory || !judgement.value || !judgement.limit) return false;
    return judgement.at_least ? *judgement.value < *judgement.limit : *judgement.value > *judgement.limit;
}

bool undecided(const Judgement& judgement) {
    if (!judgement.value || !judgement.limit || !judgement.error) return false;
    return std::abs(*judgement.value - *judgement.limit) < *judgement.error;
}

std::string verdict(const TransitionResult& result) {
    return answer(result).words;
}

int exit_code(const TransitionResult& result) {
    return answer(result).exit_code;
}

}  // namespace swale
