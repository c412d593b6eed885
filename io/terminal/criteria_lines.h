#pragma once

#include "solver/transition_result.h"

#include <string>
#include <utility>
#include <vector>

namespace swale {

/// What terminal and report both print of the criteria.

/// Names of the criteria, each once, in their order.
std::vector<std::string> criterion_names(const std::vector<Judgement>& criteria);

/// Null if there is none.
const Judgement* find_judgement(const std::vector<Judgement>& criteria, const std::string& name, const std::string& state);

/// Of a name that the list has: the first with a limit, or else the first.
const Judgement& first_with_limit(const std::vector<Judgement>& criteria, const std::string& name);

/// States may have limits of their own.
bool limits_differ(const std::vector<Judgement>& criteria, const std::string& name);

/// "<= 1.15", ">= 0 adv.", "<= its own", "none".
std::string limit_text(const std::vector<Judgement>& criteria, const std::string& name);

/// "0.921 (80%)", with "!" over the limit and "?" over one that only advises; "-" without a value.
std::string value_text(const Judgement* judgement, bool with_limit);

/// Criteria that were judged in no state, by the reason why: names that share one, then the reason.
std::vector<std::pair<std::string, std::string>> not_judged(const TransitionResult& result);

}  // namespace swale
