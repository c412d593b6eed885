#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// Where the extremes lie and how well they are known, forces on every support, other equilibria.
std::string readings_section(const RunRecord& record);

/// What each hand method asks for, and where and why it differs from the shell.
std::string hand_methods_report(const RunRecord& record);

/// The belt's numbers, each with its origin.
std::string belt_section(const RunRecord& record);

/// How the states were solved: model, grids, residuals.
std::string method_section(const RunRecord& record);

/// What was not judged and why; notes of the states; the source of every limit.
std::string judgement_section(const RunRecord& record);

/// Cautions, the case file verbatim, room for signatures.
std::string closing_sections(const RunRecord& record);
/// The first and the last of these, for a report of another kind.
std::string cautions_section();
std::string signatures_section();

}  // namespace swale
