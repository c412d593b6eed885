#pragma once

#include "io/run_record.h"

namespace swale {

/// A made-up run, small and with a number of its own in every field: state "running full" converged, "starting" not. Not the
/// result of any solution. The surface has 4 points along and 3 across.
RunRecord sample_run();

}  // namespace swale
