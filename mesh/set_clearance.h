#pragma once

#include "mesh/transition_layout.h"

namespace swale {

/// How far apart two sets have to stand for their rolls, the centre roll's offset between them [mm].
double clear_of_rolls(const Trough& trough);

/// Whether rolls `at` mm from the pulley, their tops `lift` mm above those of the full sets, stand in the pulley.
bool stands_in_pulley(const TransitionLayout& layout, double at, double lift, Support support);

}  // namespace swale
