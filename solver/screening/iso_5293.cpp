#include "solver/screening/screening_case.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double edge_limit = 1.30;  // of the rated tension; and no buckling of the centre

// L = h / sin a sqrt(M (1 - cos a) / dT), h the height by which the edge rises from the pulley: an excess of
// (h / sin a)^2 (1 - cos a).
double excess_of_edge(const StraightStrips& strips) {
    const double rise = std::max(0.0, strips.wing * std::sin(strips.angle) - strips.lift);
    const double over_sine = strips.angle > 0 ? rise / std::sin(strips.angle) : 0;
    return over_sine * over_sine * (1 - std::cos(strips.angle));
}

// The excess is spread linearly over the wings.
void size_and_strain(const ScreeningCase& screening, HandMethod& method) {
    const StraightStrips& strips = screening.strips;
    const double excess = excess_of_edge(strips), mean = strips.wing / strips.width * excess;
    const double edge_allowed = edge_limit * *screening.transition.belt.rated_tension;
    require(
        screening, {excess - mean, mean}, [=](const TensionState&) { return edge_allowed; }, method);
    strain(screening, excess - mean, mean, method);
    method.remark +=
        "; edge at most 130 % of rated, centre not slack, tension linear over the wings; the standard's own table of "
        "tension differences was not at hand";
}

}  // namespace

HandMethod iso_5293(const ScreeningCase& screening) {
    HandMethod method{"ISO 5293",
                      {},
                      {},
                      {},
                      "",
                      "ISO 5293:2004, clause 3 (as quoted), with the conditions of the abstract of ISO 5293:1981",
                      "sets of three rolls; no light conveyor belts (ISO 21183-1)"};
    if (!holds_for(screening, 3, 3, method)) return method;
    if (!screening.transition.belt.rated_tension) {
        method.remark = "needs the belt's rated tension";
        return method;
    }
    size_and_strain(screening, method);
    return method;
}

}  // namespace swale
