#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// A judgement of a reading against an optional upper limit; an advisory limit has a utilisation but no verdict.
Judgement against_upper_limit(const char* name, const StateResult& state, const Reading& reading, const char* unit,
                              const std::optional<Limit>& limit);

/// Both estimates of a reading together; absent without either.
std::optional<double> whole_error(const Reading& reading);

}  // namespace swale
