#pragma once

#include "io/run_record.h"

#include <nlohmann/json.hpp>
#include <string>

namespace swale {

/// 3-D view, flattened map and charts by states. Without scripts every state stands there with its drawings.
std::string figures_section(const RunRecord& record);

/// Frames and lines of its charts for the page's script, by the names of the drawings.
nlohmann::ordered_json charts_data(const RunRecord& record);

}  // namespace swale
