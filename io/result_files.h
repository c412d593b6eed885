#pragma once

#include "io/report/report.h"
#include "io/result_file.h"
#include "io/run_record.h"

#include <filesystem>
#include <string>

namespace swale {

/// Every file of a result: vtk/, result.h5, along.csv, across.csv, case.toml (the case file verbatim), report.html and, last,
/// summary.json. `written_at` goes into the HDF5 file as the time of the run; `more` are further sections of the report.
ResultFileList result_files(const RunRecord& record, const std::string& written_at,
                            const std::vector<ReportSection>& more = {});

/// Makes all of them before the first is written, then writes them into `folder`, which is created if need be. Each appears
/// whole or not at all; where summary.json is of this run, so is the rest. Throws FileError.
void write_result_files(const std::filesystem::path& folder, const RunRecord& record,
                        const std::vector<ReportSection>& more = {});

}  // namespace swale
