#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// The state that the pictures open with: of the limit nearest to be reached, or else the first with a solution; its place in
/// the result, or -1 without a solution.
int leading_state(const TransitionResult& result);

/// The first screen: verdict in a word and a sentence, criteria against limits by states, the belt.
std::string answer_section(const RunRecord& record);

}  // namespace swale
