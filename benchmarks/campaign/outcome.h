#pragma once

#include "benchmarks/campaign/record.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale::benchmark {

/// Judges one state: what came out, whether its numbers are finite, its forces balance, its errors are there.
Record judge_state(const TransitionCase& transition, const TransitionResult& result, const StateResult& state);

/// Solves the case of an index and judges its states. An exception is an outcome too.
std::vector<Record> judge_case(const TransitionCase& transition, int index);

/// Lowest energy of another equilibrium of the state less the energy of the one reported [N mm]; absent if none is known.
std::optional<double> lower_equilibrium(const StateResult& state);

}  // namespace swale::benchmark
