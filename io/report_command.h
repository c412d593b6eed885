#pragma once

#include <filesystem>
#include <ostream>
#include <string>

namespace swale {

/// What `swale report` is asked.
struct ReportRequest {
    std::filesystem::path folder;              ///< of a result; or the database of a study
    std::string pictures = "png,svg,pdf,glb";  ///< kinds of picture files, separated by commas; "none"
};

/// Of a study the report alone, beside its database; returns 0. Otherwise
/// writes report.html and the pictures again from a stored result, without solving; the pictures replace those of an older run.
/// Returns the exit code that `solve` gave. Throws FileError, InputErrors, BadQuantity (a kind that there is not).
int run_report(const ReportRequest& request, std::ostream& answer);

}  // namespace swale
