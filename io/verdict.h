#pragma once

#include "solver/transition_result.h"

#include <string>

namespace swale {

bool converged(const StateResult& state);

/// Judged and failed; a limit that only advises does not count.
bool over_a_limit(const Judgement& judgement);

/// Beyond a limit that only advises, which leaves `passed` open.
bool over_an_advisory_limit(const Judgement& judgement);

/// Nearer to its limit, on either side, than its estimated error: a finer grid may say otherwise.
bool undecided(const Judgement& judgement);

/// The one answer over all states: "within limits", "over a limit", "not converged". The last goes before the others.
std::string verdict(const TransitionResult& result);

/// Exit code of `solve`, in the order of the words above: 0, 1, 3.
int exit_code(const TransitionResult& result);

}  // namespace swale
