#pragma once

#include "io/run_record.h"

#include <string>
#include <vector>

namespace swale {

/// A section that another command (sizing, a study) adds to a report: its heading and body are markup-safe HTML.
struct ReportSection {
    std::string id;       ///< a plain word
    std::string heading;  ///< text
    std::string body;     ///< markup, made with io/report/html.h
};

/// The report of a run as one HTML file in itself; `more` stands right behind the answer. The same run gives the same bytes.
std::string report_html(const RunRecord& record, const std::vector<ReportSection>& more = {});

}  // namespace swale
