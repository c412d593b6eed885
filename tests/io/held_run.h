#pragma once

#include "io/run_record.h"

namespace swale {

/// The held strip of tests/io/data solved with every knot span that many times as long: some tenths of a second.
RunRecord held_run(int grid);

}  // namespace swale
