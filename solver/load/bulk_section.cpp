#include "solver/load/bulk_section.h"

#include <algorithm>
#include <cmath>

namespace swale {

double usable_width(double belt_width) {
    return belt_width <= 2000 ? 0.9 * belt_width - 50 : belt_width - 250;
}

// With l3 the centre roll, b the width covered, lambda the trough angle and theta the surcharge (ISO 5048:1989):
//   S1 = (l3 + (b - l3) cos lambda)^2 tan theta / 6
//   S2 = (l3 + (b - l3)/2 cos lambda) (b - l3)/2 sin lambda
double bulk_section(const TransitionLayout& layout, double width, double surcharge) {
    const double flat = std::min(layout.trough.centre_roll, width), wing = (width - flat) / 2, angle = layout.trough.angle;
    const double line = flat + 2 * wing * std::cos(angle);
    const double above = line * line * std::tan(surcharge) / 6;
    const double below = (flat + wing * std::cos(angle)) * wing * std::sin(angle);
    return above + below;
}

double bulk_section(const TransitionLayout& layout, const Bulk& bulk) {
    if (bulk.free_edge) return bulk_section(layout, layout.belt_width - 2 * *bulk.free_edge, bulk.surcharge);
    return bulk.fill * bulk_section(layout, usable_width(layout.belt_width), bulk.surcharge);
}

double bulk_fill(const TransitionLayout& layout, const Bulk& bulk) {
    return bulk_section(layout, bulk) / bulk_section(layout, usable_width(layout.belt_width), bulk.surcharge);
}

}  // namespace swale
