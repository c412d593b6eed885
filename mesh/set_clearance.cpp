#include "mesh/set_clearance.h"

#include <algorithm>
#include <cmath>

namespace swale {

double clear_of_rolls(const Trough& trough) {
    return trough.roll_diameter + std::abs(trough.centre_offset);
}

// Clear if the axes are farther apart than both radii.
bool stands_in_pulley(const TransitionLayout& layout, double at, double lift, Support support) {
    if (layout.pulley.support == Support::held || support == Support::held) return false;
    const double roll = layout.trough.roll_diameter / 2, pulley = layout.pulley.diameter / 2;
    const double nearest = at + std::min(0.0, layout.trough.centre_offset);
    const double drop = (layout.pulley.lift - pulley) - (lift - roll);
    return std::hypot(nearest, drop) < roll + pulley;
}

}  // namespace swale
