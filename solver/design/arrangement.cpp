#include "solver/design/arrangement.h"

#include "mesh/set_clearance.h"

#include <fmt/core.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

constexpr double degree = std::numbers::pi / 180;

Parameter share_of_station(int k, double distance) {
    return {fmt::format("station {} share of the distance", k + 1),
            "1",
            1e-3 / distance,
            false,
            [k](const TransitionCase& c, const TensionState&) { return c.layout.stations[k].at / c.layout.distance; },
            [k](TransitionCase& c, TensionState&, double value) { c.layout.stations[k].at = value * c.layout.distance; }};
}

Parameter named(const TransitionCase& transition, const std::string& name) {
    const std::vector<Parameter> all = geometry_parameters(transition);
    return *std::ranges::find(all, name, &Parameter::name);
}

// Of a flush pulley; where a search looks.
double clear_of_pulley(const TransitionLayout& layout) {
    return (layout.pulley.diameter + layout.trough.roll_diameter) / 2 + 5;
}

// Windows leave neighbours a fifth of a bay apart.
Variable share_variable(int k, const TransitionCase& transition) {
    const TransitionLayout& layout = transition.layout;
    const double bay = 1.0 / static_cast<double>(layout.stations.size() + 1), at = k;
    const double nearest = clear_of_pulley(layout) / layout.distance;
    return {share_of_station(k, layout.distance), std::max((at + 0.6) * bay, nearest), (at + 1.4) * bay};
}

Variable angle_variable(int k, const SizingBounds& bounds, const TransitionCase& transition) {
    double low = 0.1 * transition.layout.trough.angle, high = transition.layout.trough.angle;
    if (!bounds.angles.empty()) {
        low = std::ranges::min(bounds.angles);
        high = std::min(high, std::ranges::max(bounds.angles));
    }
    return {named(transition, fmt::format("station {} angle", k + 1)), low, high};
}

}  // namespace

TransitionCase with_values(TransitionCase transition, const std::vector<Variable>& variables,
                           const std::vector<double>& values) {
    TensionState unused;
    for (std::size_t k = 0; k < variables.size(); ++k) variables[k].parameter.set(transition, unused, values[k]);
    return transition;
}

std::vector<double> values_of(const TransitionCase& transition, const std::vector<Variable>& variables) {
    std::vector<double> values;
    for (const Variable& variable : variables) values.push_back(variable.parameter.value(transition, {}));
    return values;
}

Variable distance_variable(const SizingBounds& bounds, const TransitionCase& transition) {
    return {named(transition, "distance"), bounds.shortest, bounds.longest};
}

Variable lift_variable(const SizingBounds& bounds, const TransitionCase& transition) {
    return {named(transition, "pulley lift"), bounds.lowest_lift, bounds.highest_lift};
}

std::vector<Variable> station_variables(const SizingBounds& bounds, const TransitionCase& transition) {
    std::vector<Variable> variables;
    for (int k = 0; k < static_cast<int>(transition.layout.stations.size()); ++k) {
        variables.push_back(share_variable(k, transition));
        variables.push_back(angle_variable(k, bounds, transition));
    }
    return variables;
}

TransitionCase at_distance(TransitionCase transition, double distance) {
    TransitionLayout& layout = transition.layout;
    const double factor = std::ceil(distance) / layout.distance;
    layout.distance = std::ceil(distance);
    for (Station& station : layout.stations) station.at = std::round(factor * station.at);
    return transition;
}

TransitionCase as_built(TransitionCase transition) {
    TransitionLayout& layout = transition.layout;
    const auto tenths = [](double angle) { return std::round(angle / degree * 10) / 10 * degree; };
    layout.distance = std::ceil(layout.distance);
    layout.pulley.lift = std::round(layout.pulley.lift);
    for (Station& station : layout.stations) {
        station.at = std::round(station.at);
        station.angle = tenths(station.angle);
    }
    return transition;
}

TransitionCase with_stations(TransitionCase transition, int stations) {
    TransitionLayout& layout = transition.layout;
    if (static_cast<int>(layout.stations.size()) == stations) return transition;
    layout.stations.clear();
    for (int k = 1; k <= stations; ++k) {
        const double share = static_cast<double>(k) / (stations + 1);
        layout.stations.push_back({share * layout.distance, share * layout.trough.angle, {}, Support::rolls, {}});
    }
    return transition;
}

std::string name_of(const TransitionLayout& layout) {
    std::vector<std::string> sets;
    for (const Station& station : layout.stations)
        sets.push_back(fmt::format("{:.3g} deg at {:.0f} mm", station.angle / degree, station.at));
    const double lift = layout.pulley.lift;
    const std::string pulley = lift == 0  ? "pulley flush"
                               : lift > 0 ? fmt::format("pulley {:.0f} mm up", lift)
                                          : fmt::format("pulley {:.0f} mm down", -lift);
    return pulley + (sets.empty() ? ", no set between" : fmt::format(", between: {}", fmt::join(sets, "; ")));
}

std::string why_impossible(const TransitionLayout& layout) {
    struct Place {
        double at, lift;
        Support support;
    };
    std::vector<Place> places;
    for (const Station& station : layout.stations) places.push_back({station.at, layout.lift_of(station), station.support});
    places.push_back({layout.distance, 0, layout.trough.support});
    double before = -clear_of_rolls(layout.trough);
    for (const Place& place : places) {
        if (place.at < before + clear_of_rolls(layout.trough))
            return fmt::format("at {:.0f} mm a set's rolls stand in those before", place.at);
        if (stands_in_pulley(layout, place.at, place.lift, place.support))
            return fmt::format("at {:.0f} mm a set's rolls stand in the pulley", place.at);
        before = place.at;
    }
    return "";
}

}  // namespace swale
