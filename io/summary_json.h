#pragma once

#include "io/run_record.h"

#include <nlohmann/json.hpp>

#include <string>

namespace swale {

/// The text of summary.json, for programs; `io/summary.schema.json` describes it. A number reads back to the same bits, and
/// what is not judged, not defined or not converged is null. Only the part `cost` differs between two runs of one case.
std::string summary_json(const RunRecord& record);

/// The same as a document.
nlohmann::ordered_json summary_document(const RunRecord& record);

}  // namespace swale
