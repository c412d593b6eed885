#include "solver/screening/screening_case.h"

namespace swale {

namespace {

// The limit of the case; without one, or without a rated tension, there is none to size by.
std::optional<double> edge_allowed(const TransitionCase& transition) {
    if (!transition.limits.edge_tension || !transition.belt.rated_tension) return {};
    return transition.limits.edge_tension->value * *transition.belt.rated_tension;
}

HandMethod strips_with(const ScreeningCase& screening, HandMethod method, double mean, double lowest) {
    const double above = screening.strips.edge() - mean;
    strain(screening, above, mean, method);
    const std::optional<double> allowed = edge_allowed(screening.transition);
    if (allowed)
        require(screening, {above, mean - lowest}, *allowed, method);
    else
        method.remark = "needs a limit of the edge tension and the rated tension";
    return method;
}

}  // namespace

HandMethod quadratic_strips(const ScreeningCase& screening) {
    return strips_with(screening,
                       {"straight strips", {}, {}, {}, "", "plane geometry and balance of forces, derived for this program"},
                       screening.strips.mean(), screening.strips.lowest());
}

HandMethod linear_strips(const ScreeningCase& screening) {
    const double edge = screening.strips.edge();
    HandMethod method{
        "straight strips, linear wings",
        {},
        {},
        {},
        "",
        "the two criteria of DIN 22101 (no slack centre, edge below what is allowed) as restated in GB 50431-2020, 10.4.1; "
        "derived, not the printed formula"};
    if (!holds_for(screening, 2, 3, method)) return method;
    method = strips_with(screening, method, screening.strips.linear_mean(), edge < 0 ? edge : 0.0);
    method.remark += "; tension taken as linear over the wings, with the case's own limit of the edge";
    return method;
}

}  // namespace swale
