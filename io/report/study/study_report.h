#pragma once

#include "io/study/study_record.h"

#include <filesystem>
#include <string>

namespace swale {

/// The report of a study as one HTML file in itself, of what its database holds. The same database gives the same bytes.
std::string study_report_html(const StudyRecord& record);

/// Where it stands: beside the database, STUDY.html for STUDY.h5.
std::filesystem::path study_report_path(const std::filesystem::path& database);

}  // namespace swale
