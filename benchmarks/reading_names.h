#pragma once

#include "solver/transition_result.h"

#include <array>
#include <tuple>

namespace swale::benchmark {

/// Names in the order of Readings::all().
inline constexpr std::array reading_names{"edge strain max",     "centre strain min",       "edge tension max",
                                          "tension min",         "junction bending strain", "surface strain max",
                                          "wing line force max", "roll force max"};

inline constexpr std::size_t reading_count = reading_names.size();
static_assert(std::tuple_size_v<decltype(Readings{}.all())> == reading_count);

}  // namespace swale::benchmark
