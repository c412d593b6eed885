#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// The extreme of the states with a given tension.
template <class Better>
const TensionState* extreme(const std::vector<TensionState>& states, const Better& better) {
    const TensionState* found = nullptr;
    for (const TensionState& state : states)
        if (state.total && (!found || better(*state.total, *found->total))) found = &state;
    return found;
}

struct Demand {
    double distance = 0;
    std::string what;
};

void raise(Demand& demand, double share, double tension, double modulus, const std::string& what) {
    if (share <= 0) return;
    const double distance = std::sqrt(modulus * share / tension);
    if (distance > demand.distance) demand = {distance, what};
}

}  // namespace

std::optional<double> ScreeningCase::share_of_rated() const {
    if (!highest || !transition.belt.rated_tension) return {};
    return per_width(*highest) / *transition.belt.rated_tension;
}

ScreeningCase screening_case(const TransitionCase& transition) {
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    return {transition, straight_strips(transition.layout), A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1),
            extreme(transition.states, std::greater<>()), extreme(transition.states, std::less<>())};
}

bool holds_for(const ScreeningCase& screening, int fewest, int most, HandMethod& method) {
    const int rolls = screening.transition.layout.trough.rolls;
    if (rolls >= fewest && rolls <= most) return true;
    const std::string range = fewest == most ? fmt::format("{}", fewest) : fmt::format("{} or {}", fewest, most);
    method.remark = fmt::format("not for this set: holds for sets of {} rolls, these have {}", range, rolls);
    return false;
}

bool counts_as_cords(Carcass carcass) {
    return carcass != Carcass::textile;
}

std::string carcass_remark(Carcass carcass) {
    if (carcass != Carcass::aramid) return "";
    return "; no source covers aramid: taken for steel cord, the safe side, since it stretches little more (from memory, not "
           "sure)";
}

void require(const ScreeningCase& screening, const Spread& spread, const EdgeAllowed& edge_allowed, HandMethod& method) {
    if (!screening.highest) {
        method.remark = "no state of a given tension";
        return;
    }
    Demand demand;
    for (const TensionState& state : screening.transition.states) {
        if (!state.total) continue;
        const double tension = screening.per_width(state), allowed = edge_allowed(state);
        if (tension >= allowed && spread.above > 0) {
            method.remark = fmt::format("the mean tension of \"{}\", {:.1f} N/mm, leaves the edge nothing of {:.1f}",
                                        state.name, tension, allowed);
            return;
        }
        raise(demand, spread.above, allowed - tension, screening.modulus, "the edge in \"" + state.name + "\" binds");
        raise(demand, spread.below, tension, screening.modulus, "the slackest strip in \"" + state.name + "\" binds");
    }
    method.minimum_distance = demand.distance;
    method.remark = demand.what.empty() ? "nothing binds" : demand.what;
}

std::string implied_excess(const ScreeningCase& screening, double distance) {
    if (!(distance > 0)) return "no length is needed";
    return fmt::format("straight strips of that length stretch the edge {:.2g} % beyond the centre",
                       100 * screening.strips.edge() / (distance * distance));
}

void strain(const ScreeningCase& screening, double edge_above, double centre_below, HandMethod& method) {
    if (!screening.highest) return;
    const double square = screening.transition.layout.distance * screening.transition.layout.distance;
    method.edge_strain = screening.per_width(*screening.highest) / screening.modulus + edge_above / square;
    method.centre_strain = screening.per_width(*screening.lowest) / screening.modulus - centre_below / square;
}

}  // namespace swale
