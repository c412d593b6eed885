#pragma once

#include "benchmarks/campaign/record.h"

namespace swale::benchmark {

/// Prints counts by outcome and by kind, the worst imbalance, and a line for every state that failed.
void print_summary(const std::vector<Record>& records);

}  // namespace swale::benchmark
