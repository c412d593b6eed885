#pragma once

#include "solver/transition_case.h"

namespace swale::benchmark {

/// A plausible transition with two states, the same for the same seed and index. Drawn from what is built and what an engineer
/// may try on the way: trade widths of 500 to 2400 mm, 20 to 45 deg, distances of 0.5 to 5 widths (steel cord from 1), pulley
/// lifts from slightly negative to the whole trough depth, none to two intermediate sets, tensions from 1 N/mm to rated.
TransitionCase random_case(int seed, int index);

}  // namespace swale::benchmark
