#include "solver/sizing.h"

#include "solver/design/levers.h"
#include "solver/design/sizer.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace swale {

namespace {

using Arrangements = std::vector<Arrangement>;

// What a set more must save of the distance, or leave more of the limit, to be worth its keep.
constexpr double worth_a_set = 0.01;

double distance_with_sets(const Arrangement& one) {
    return one.transition.layout.distance * (1 + worth_a_set * static_cast<double>(one.transition.layout.stations.size()));
}

double headroom_with_sets(const Arrangement& one) {
    return one.headroom - worth_a_set * static_cast<double>(one.transition.layout.stations.size());
}

// The others leave the distance as it is.
bool finds_distance(SizingAim aim) {
    return aim == SizingAim::distance || aim == SizingAim::all;
}

// Where most is left comes first; of distances the shortest that passes.
void rank(SizingAim aim, Arrangements& arrangements) {
    std::ranges::stable_sort(arrangements, [&](const Arrangement& a, const Arrangement& b) {
        if (a.passes != b.passes) return a.passes;
        if (finds_distance(aim) && a.passes) return distance_with_sets(a) < distance_with_sets(b);
        return headroom_with_sets(a) > headroom_with_sets(b);
    });
}

// A scan of the range, so that no kink between hides the best.
std::vector<std::vector<double>> scan(const std::vector<Variable>& variables, const std::vector<double>& given, std::size_t k,
                                      int points) {
    std::vector<std::vector<double>> starts;
    for (int i = 0; i < points; ++i) {
        starts.push_back(given);
        starts.back()[k] = std::lerp(variables[k].low, variables[k].high, static_cast<double>(i) / (points - 1));
    }
    return starts;
}

Arrangements of_lift(const TransitionCase& given, const SizingBounds& bounds, Sizer& sizer) {
    const std::vector<Variable> lift{lift_variable(bounds, given)};
    Arrangements found;
    for (const std::vector<double>& start : scan(lift, values_of(given, lift), 0, 5))
        found.push_back(sizer.tried_as_it_is(as_built(with_values(given, lift, start))));
    rank(SizingAim::lift, found);
    Arrangement best = sizer.most_headroom(given, lift, {values_of(found.front().transition, lift)});
    std::erase_if(found, [&](const Arrangement& one) { return one.name == best.name; });
    found.insert(found.begin(), std::move(best));
    return found;
}

// The two stock angles next to each station's, in all ways.
std::vector<TransitionCase> with_stock_angles(const TransitionCase& transition, const std::vector<double>& stock) {
    std::vector<TransitionCase> cases{transition};
    if (stock.empty()) return cases;
    for (std::size_t k = 0; k < transition.layout.stations.size(); ++k) {
        std::vector<double> nearest = stock;
        const double wanted = transition.layout.stations[k].angle;
        std::ranges::sort(nearest, {}, [&](double angle) { return std::abs(angle - wanted); });
        nearest.resize(std::min<std::size_t>(nearest.size(), 2));
        std::vector<TransitionCase> more;
        for (const TransitionCase& one : cases)
            for (const double angle : nearest) more.emplace_back(one).layout.stations[k].angle = angle;
        cases = std::move(more);
    }
    return cases;
}

// Only the shares, the angles being those in stock.
std::vector<Variable> share_variables(const SizingBounds& bounds, const TransitionCase& transition) {
    std::vector<Variable> shares;
    const std::vector<Variable> all = station_variables(bounds, transition);
    for (std::size_t k = 0; k < all.size(); k += 2) shares.push_back(all[k]);
    return shares;
}

Arrangement best_with(const TransitionCase& start, const SizingBounds& bounds, Sizer& sizer) {
    if (start.layout.stations.empty()) return sizer.tried_as_it_is(start);
    const std::vector<Variable> variables = station_variables(bounds, start);
    const Arrangement any_angle = sizer.most_headroom(start, variables, {values_of(start, variables)});
    if (bounds.angles.empty()) return any_angle;
    Arrangements of_stock;
    for (const TransitionCase& one : with_stock_angles(any_angle.transition, bounds.angles)) {
        const std::vector<Variable> shares = share_variables(bounds, one);
        of_stock.push_back(sizer.most_headroom(one, shares, {values_of(one, shares)}));
    }
    rank(SizingAim::idlers, of_stock);
    return of_stock.front();
}

Arrangements of_idlers(const TransitionCase& given, const SizingBounds& bounds, Sizer& sizer) {
    Arrangements found;
    for (int stations = 0; stations <= bounds.most_idlers; ++stations)
        found.push_back(best_with(with_stations(given, stations), bounds, sizer));
    rank(SizingAim::idlers, found);
    return found;
}

Arrangement shortest_with(const TransitionCase& start, const SizingBounds& bounds, Sizer& sizer) {
    std::vector<Variable> variables{distance_variable(bounds, start), lift_variable(bounds, start)};
    std::ranges::move(station_variables(bounds, start), std::back_inserter(variables));
    Arrangements found;
    const TransitionCase any_angle = sizer.shortest_with(start, variables);
    for (const TransitionCase& one : with_stock_angles(any_angle, bounds.angles)) found.push_back(sizer.nearly_shortest(one));
    rank(SizingAim::all, found);
    return found.front();
}

Arrangements of_all(const TransitionCase& given, const SizingBounds& bounds, Sizer& sizer) {
    Arrangements found{sizer.nearly_shortest(given)};
    for (int stations = 0; stations <= bounds.most_idlers; ++stations)
        found.push_back(shortest_with(with_stations(found.front().transition, stations), bounds, sizer));
    rank(SizingAim::all, found);
    return found;
}

// The best first, proved; where the whole solution does not bear out the trials, the next.
Arrangements proved(SizingAim aim, Arrangements found, Sizer& sizer) {
    for (Arrangement& one : found) {
        one = finds_distance(aim) ? sizer.shortest(one.transition) : sizer.proved(one.transition);
        if (one.passes) break;
    }
    rank(aim, found);
    return found;
}

Arrangements looked_for(const TransitionCase& given, const SizingBounds& bounds, Sizer& sizer) {
    switch (bounds.aim) {
        case SizingAim::distance:
            return {sizer.shortest(given)};
        case SizingAim::lift:
            return proved(bounds.aim, of_lift(given, bounds, sizer), sizer);
        case SizingAim::idlers:
            return proved(bounds.aim, of_idlers(given, bounds, sizer), sizer);
        case SizingAim::all:
            return proved(bounds.aim, of_all(given, bounds, sizer), sizer);
    }
    return {};
}

std::string reason_of(const SizingBounds& bounds, const Arrangement& first) {
    const double distance = first.transition.layout.distance;
    const bool by_distance = finds_distance(bounds.aim);
    if (!first.passes)
        return by_distance ? fmt::format("even at {:.0f} mm {} stands in the way", distance, first.binding)
                           : fmt::format("{} stands in the way", first.binding);
    if (by_distance && distance <= std::ceil(bounds.shortest)) return "the shortest that was allowed";
    const bool highest =
        bounds.aim == SizingAim::lift && first.transition.layout.pulley.lift >= std::floor(bounds.highest_lift);
    return first.binding + " binds" + (highest ? "; higher than this was not allowed" : "");
}

}  // namespace

Sizing size_transition(const TransitionCase& given, const SizingBounds& bounds, const ProgressListener& listener) {
    Sizer sizer(given, bounds, listener);
    Sizing sizing;
    sizing.arrangements = looked_for(given, bounds, sizer);
    const Arrangement& first = sizing.arrangements.front();
    sizing.reason = reason_of(bounds, first);
    if (first.passes) sizing.best = first;
    sizing.result = sizer.result_of(first.transition);
    sizing.steps = sizer.steps();
    sizing.states_tried = sizer.trials().states_solved();
    sizing.whole_solutions = sizer.trials().whole_solutions();
    sizing.levers = levers_of(first.transition, sizing.result);
    return sizing;
}

}  // namespace swale
