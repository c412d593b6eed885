#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// The text of summary.json, for programs; `io/summary.schema.json` describes it. A number reads back to the same bits, and
/// what is not judged, not defined or not converged is null. Only the part `cost` differs between two runs of one case.
std::string summary_json(const RunRecord& record);

}  // namespace swale
