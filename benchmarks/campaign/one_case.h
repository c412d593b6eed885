#pragma once

#include "solver/transition_case.h"

namespace swale::benchmark {

/// Solves one case and prints everything: the case as a case file, then readings, forces, iterations and notes of each state.
/// `whole_course`: every Newton iteration to stderr.
void print_one_case(const TransitionCase& transition, int index, bool whole_course);

}  // namespace swale::benchmark
