#pragma once

#include "solver/transition_case.h"

#include <string>

namespace swale::benchmark {

/// The case as a case file that `swale solve` reads. Every number as it is; what has its default is left out.
std::string case_text(const TransitionCase& transition);

/// One line for tables: "W 1200, EP 800/4 6+3, 35 deg, L 2.0 W, lift 0.50 depth, 1 station, stuck, half".
std::string case_line(const TransitionCase& transition);

}  // namespace swale::benchmark
