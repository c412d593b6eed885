#include "solver/load/bulk_section.h"

#include <algorithm>
#include <cmath>

namespace swale {

double usable_width(double belt_width) {
    return belt_width <= 2000 ? 0.9 * belt_width - 50 : belt_width - 250;
}

namespace {

/// Of one side of the bulk's section, from the centre line on: width, and area under a level line through its end.
struct HalfSection {
    double y = 0, under = 0;
};

// What the belt lies on, roll by roll without the gaps, as the standard draws it; the outermost roll takes the rest.
HalfSection half_section(const TransitionLayout& layout, double width) {
    const Trough& trough = layout.trough;
    HalfSection half;
    double left = width / 2;
    const auto along = [&](double length, double angle) {
        const double taken = std::min(length, left), rise = taken * std::sin(angle), run = taken * std::cos(angle);
        half.under += rise * (half.y + run / 2);
        half.y += run;
        left -= taken;
    };
    if (trough.rolls > 2) along(trough.centre_roll / 2, 0);
    if (trough.rolls == 5) along(trough.inner_roll, trough.inner_angle);
    along(left, trough.angle);
    return half;
}

}  // namespace

// With l3 the centre roll, b the width covered, lambda the trough angle and theta the surcharge (ISO 5048:1989):
//   S1 = (l3 + (b - l3) cos lambda)^2 tan theta / 6
//   S2 = (l3 + (b - l3)/2 cos lambda) (b - l3)/2 sin lambda
double bulk_section(const TransitionLayout& layout, double width, double surcharge) {
    const HalfSection half = half_section(layout, width);
    return 4 * half.y * half.y * std::tan(surcharge) / 6 + 2 * half.under;
}

double bulk_section(const TransitionLayout& layout, const Bulk& bulk) {
    if (bulk.free_edge) return bulk_section(layout, layout.belt_width - 2 * *bulk.free_edge, bulk.surcharge);
    return bulk.fill * bulk_section(layout, usable_width(layout.belt_width), bulk.surcharge);
}

double bulk_fill(const TransitionLayout& layout, const Bulk& bulk) {
    return bulk_section(layout, bulk) / bulk_section(layout, usable_width(layout.belt_width), bulk.surcharge);
}

}  // namespace swale
