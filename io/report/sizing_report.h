#pragma once

#include "io/report/report.h"
#include "solver/sizing.h"

namespace swale {

/// What the report of a sized case says of the search: what was found, headroom over distance, arrangements, what moves it,
/// every trial.
ReportSection sizing_report(const Sizing& sizing, const SizingBounds& bounds);

}  // namespace swale
