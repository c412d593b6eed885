#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// The answer for people, to be read in ten seconds: the verdict in a sentence, states against limits, where and why, forces on
/// the supports, what was not judged, states without a solution and cautions. Plain text, lines of at most 100 characters.
std::string terminal_answer(const RunRecord& record);

}  // namespace swale
