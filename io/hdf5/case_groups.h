#pragma once

#include "io/hdf5/writer.h"
#include "io/run_record.h"

#include <string>

namespace swale {

/// What a result file says of the run as a whole, by the layout in io/result_database.h: attributes of the root and the groups
/// settings, belt, rolls, criteria and cost.
void write_case_groups(const Hdf5Group& root, const RunRecord& record, const std::string& written_at);

}  // namespace swale
