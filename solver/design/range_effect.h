#pragma once

#include "solver/range_study.h"

namespace swale {

/// The effect on every studied quantity. A state that has no solution with the belt as given can't be compared; an end that has
/// none leaves the other.
std::array<RangeEffect, studied_quantities> range_effects(const StudiedRun& as_given, const StudiedRun& low,
                                                          const StudiedRun& high);

}  // namespace swale
