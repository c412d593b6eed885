#pragma once

#include "solver/wear_survey.h"

#include <string>
#include <vector>

namespace swale {

/// Readings by rolls in the order in which the rolls come. The first line names the columns, lengths with their unit:
///   roll,at [mm],depth [mm]
///   roll,from [mm],to [mm],mark
/// with the marks contact, none, unsure. Lines that are empty or begin with # are left out. Throws InputErrors; so do places
/// farther than `half` from the middle of the roll [mm].
std::vector<SurveyedRoll> read_readings_csv(const std::string& text, const std::string& file, double half);

}  // namespace swale
