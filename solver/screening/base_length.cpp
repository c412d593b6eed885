#include "solver/screening/screening_case.h"

#include <algorithm>

namespace swale {

HandMethod base_length(const ScreeningCase& screening) {
    HandMethod method{"DIN 22101 base length",
                      {},
                      {},
                      {},
                      "",
                      "DIN 22101:2011 as restated in GB 50431-2020, clause 10.4.1",
                      "sets of two and three rolls, textile and steel cord"};
    if (!holds_for(screening, 2, 3, method)) return method;
    const TransitionCase& transition = screening.transition;
    if (!transition.belt.carcass) {
        method.remark = "needs the kind of carcass";
        return method;
    }
    // l = c h, h the height of the belt's edge in the trough above the pulley's top.
    const double factor = counts_as_cords(*transition.belt.carcass) ? 14 : 8.5;
    const double height = std::max(0.0, transition.layout.trough_depth() - transition.layout.pulley.lift);
    method.minimum_distance = factor * height;
    method.remark = "a floor, whatever the tension; " + implied_excess(screening, *method.minimum_distance) +
                    carcass_remark(*transition.belt.carcass);
    return method;
}

}  // namespace swale
