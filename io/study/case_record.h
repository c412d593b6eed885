#pragma once

#include "io/study/study_plan.h"

#include <nlohmann/json.hpp>

namespace swale {

/// What a study keeps of one case, on one line of its journal:
///   { "case": number, "inputs": [labels], "case_text", "status": "solved" | "bad input" | "fault", "reason",
///     "summary": summary.json without `belt`, "curves": [ {"state", columns of along.csv} ] }     null unless solved
/// and with `fields` also
///     "fields": [ {"state", "along", "across", "values": { NAME: [numbers, along the belt first] }} ]    of converged states
/// A state that did not converge is in `summary` with its reason.
nlohmann::ordered_json case_record(const PlannedCase& planned, const std::string& name_in_messages, bool fields);

}  // namespace swale
