#pragma once

#include "io/study/study_plan.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace swale {

/// What a study keeps of each case, on one line of its journal:
///   { "case": number, "inputs": [labels], "case_text", "status": "solved" | "bad input" | "fault", "reason",
///     "summary": summary.json without `belt`, "curves": [ {"state", columns of along.csv} ] }     null unless solved
/// and with `fields` also
///     "fields": [ {"state", "along", "across", "values": { NAME: [numbers, along the belt first] }} ]    of converged states
/// A state that did not converge is in `summary` with its reason. `alike`: cases that differ in the pull of their one state
/// alone; from the highest down each is solved from the one before. Records in the order of `alike`. `case_file` for
/// messages.
std::vector<nlohmann::ordered_json> case_records(const std::vector<PlannedCase>& alike, const std::string& case_file,
                                                 bool fields);

}  // namespace swale
