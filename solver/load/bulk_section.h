#pragma once

#include "mesh/transition_layout.h"
#include "solver/transition_case.h"

namespace swale {

/// Width of the flat belt that a full load covers [mm]: 0.9 B - 50 mm up to B = 2000 mm, B - 250 mm above (ISO 5048 and
/// DIN 22101, from memory (sure)).
double usable_width(double belt_width);

/// Cross-section of bulk that covers `width` of the flat belt in a full set [mm^2]. The trapezium up to the line between both
/// free edges and the parabola above it that meets them at the angle of surcharge (ISO 5048, S2 and S1); the same of sets of
/// two and five rolls.
double bulk_section(const TransitionLayout& layout, double width, double surcharge);

/// The same of a case: its fill times the section of a full load, or what its free edge leaves.
double bulk_section(const TransitionLayout& layout, const Bulk& bulk);

/// That cross-section as a share of a full load's.
double bulk_fill(const TransitionLayout& layout, const Bulk& bulk);

}  // namespace swale
