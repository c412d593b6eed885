#include "solver/screening/screening_case.h"

#include <algorithm>

namespace swale {

namespace {

constexpr const char* strips_hold_for = "any lift, small slopes, strips that do not hold each other and bend freely";

// Without a limit in every state, or without a rated tension, there is nothing to size by.
bool edge_is_limited(const TransitionCase& transition) {
    return transition.belt.rated_tension && std::ranges::all_of(transition.states, [&](const TensionState& state) {
               return transition.limits_in(state).edge_tension.has_value();
           });
}

HandMethod strips_with(const ScreeningCase& screening, HandMethod method, double mean, double lowest) {
    const double above = screening.strips.edge() - mean;
    strain(screening, above, mean, method);
    const TransitionCase& transition = screening.transition;
    const auto edge_allowed = [&](const TensionState& state) {
        return transition.limits_in(state).edge_tension->value * *transition.belt.rated_tension;
    };
    if (edge_is_limited(transition))
        require(screening, {above, mean - lowest}, edge_allowed, method);
    else
        method.remark = "needs a limit of the edge tension and the rated tension";
    return method;
}

}  // namespace

HandMethod quadratic_strips(const ScreeningCase& screening) {
    return strips_with(
        screening,
        {"straight strips", {}, {}, {}, "", "plane geometry and balance of forces, derived for this program", strips_hold_for},
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
        "derived, not the printed formula",
        strips_hold_for};
    if (!holds_for(screening, 2, 3, method)) return method;
    method = strips_with(screening, method, screening.strips.linear_mean(), edge < 0 ? edge : 0.0);
    method.remark += "; tension taken as linear over the wings, with the case's own limit of the edge";
    return method;
}

}  // namespace swale
