#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <algorithm>

namespace swale {

// The longest of the base length and of the lengths of both criteria, which are those of strips with linear wings.
HandMethod din_22101(const ScreeningCase& screening) {
    const HandMethod base = base_length(screening);
    HandMethod method = linear_strips(screening);
    method.name = "DIN 22101";
    method.source =
        "DIN 22101:2011 as restated in GB 50431-2020, 10.4.1: base length, no slack centre, edge below what is "
        "allowed; the lengths of the criteria are derived, not the printed formulas";
    method.validity = base.validity;
    if (!base.minimum_distance) {
        method.minimum_distance.reset();
        method.remark = base.remark;
    } else if (method.minimum_distance) {
        const bool floor = *base.minimum_distance >= *method.minimum_distance;
        method.remark = fmt::format("base length {:.0f} mm, criteria {:.0f} mm: {}", *base.minimum_distance,
                                    *method.minimum_distance, floor ? "the base length binds" : method.remark) +
                        carcass_remark(*screening.transition.belt.carcass);
        method.minimum_distance = std::max(*base.minimum_distance, *method.minimum_distance);
    }
    return method;
}

}  // namespace swale
