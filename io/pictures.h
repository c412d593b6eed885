#pragma once

#include "io/result_file.h"
#include "io/run_record.h"

#include <set>
#include <string>

namespace swale {

/// Kinds of picture files: "png", "svg", "pdf" of every map and chart, "glb" of the belt in space.
const std::set<std::string>& picture_kinds();

/// All pictures of a run in the folder `pictures`, named state-1-<name>-<what>.<kind>; `kinds` of those above. `created` (UTC)
/// goes into the pdf files.
ResultFileList pictures(const RunRecord& record, const std::set<std::string>& kinds, const std::string& created);

}  // namespace swale
