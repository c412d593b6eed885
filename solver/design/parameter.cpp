#include "solver/sensitivity.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

// Small against a cover's indentation and a roll's radius; larger for what the running trough depends on, whose equilibrium is
// found only nearly.
constexpr double step_of_length = 1e-3, step_of_angle = 1e-6, step_of_factor = 2e-5;

template <class Value>
Parameter geometric(std::string name, std::string unit, double step, Value of) {
    const auto set = [of](TransitionCase& c, TensionState&, double value) { of(c.layout, value); };
    const auto value = [of](const TransitionCase& c, const TensionState&) {
        TransitionLayout layout = c.layout;
        return of(layout, std::nullopt);
    };
    return {std::move(name), std::move(unit), step, false, value, set};
}

using NewValue = std::optional<double>;

double distance_of(TransitionLayout& layout, NewValue value) {
    const double given = layout.distance;
    layout.distance = value.value_or(given);
    for (Station& station : layout.stations) station.at *= layout.distance / given;
    return layout.distance;
}

double lift_of(TransitionLayout& layout, NewValue value) {
    return layout.pulley.lift = value.value_or(layout.pulley.lift);
}

void add_station(int k, std::vector<Parameter>& parameters) {
    const std::string name = fmt::format("station {}", k + 1);
    parameters.push_back(geometric(name + " place", "mm", step_of_length, [k](TransitionLayout& layout, NewValue value) {
        return layout.stations[k].at = value.value_or(layout.stations[k].at);
    }));
    parameters.push_back(geometric(name + " angle", "rad", step_of_angle, [k](TransitionLayout& layout, NewValue value) {
        return layout.stations[k].angle = value.value_or(layout.stations[k].angle);
    }));
    parameters.push_back(geometric(name + " lift", "mm", step_of_length, [k](TransitionLayout& layout, NewValue value) {
        Station& station = layout.stations[k];
        if (value) station.lift = *value;
        return layout.lift_of(station);
    }));
}

Parameter total_tension(const TensionState& state) {
    return {"tension",
            "N",
            step_of_factor * state.total.value_or(0),
            true,
            [](const TransitionCase&, const TensionState& s) { return s.total.value_or(0); },
            [](TransitionCase&, TensionState& s, double value) { s.total = value; }};
}

using Law = Eigen::Matrix3d Section::*;

Parameter entry(const char* name, const char* unit, Law law, int k, const Section& section) {
    return {name,
            unit,
            step_of_factor * (section.*law)(k, k),
            true,
            [=](const TransitionCase& c, const TensionState&) { return (c.belt.section.*law)(k, k); },
            [=](TransitionCase& c, TensionState&, double value) { (c.belt.section.*law)(k, k) = value; }};
}

Parameter whole(const char* name, Law law) {
    return {name,
            "1",
            step_of_factor,
            true,
            [](const TransitionCase&, const TensionState&) { return 1.0; },
            [=](TransitionCase& c, TensionState&, double value) { c.belt.section.*law *= value; }};
}

Parameter mass(const Section& section) {
    return {"mass",
            "t/mm^2",
            step_of_factor * section.mass,
            true,
            [](const TransitionCase& c, const TensionState&) { return c.belt.section.mass; },
            [](TransitionCase& c, TensionState&, double value) { c.belt.section.mass = value; }};
}

}  // namespace

std::vector<Parameter> geometry_parameters(const TransitionCase& transition) {
    std::vector<Parameter> parameters{geometric("distance", "mm", step_of_length, distance_of),
                                      geometric("pulley lift", "mm", step_of_length, lift_of)};
    for (std::size_t k = 0; k < transition.layout.stations.size(); ++k) add_station(static_cast<int>(k), parameters);
    return parameters;
}

std::vector<Parameter> belt_parameters(const TransitionCase& transition) {
    const Section& section = transition.belt.section;
    std::vector<Parameter> parameters;
    if (transition.states.front().total) parameters.push_back(total_tension(transition.states.front()));
    parameters.push_back(mass(section));
    parameters.push_back(whole("A", &Section::membrane));
    parameters.push_back(entry("A11", "N/mm", &Section::membrane, 0, section));
    parameters.push_back(entry("A22", "N/mm", &Section::membrane, 1, section));
    parameters.push_back(entry("A66", "N/mm", &Section::membrane, 2, section));
    parameters.push_back(whole("D", &Section::bending));
    parameters.push_back(entry("D11", "N mm", &Section::bending, 0, section));
    parameters.push_back(entry("D22", "N mm", &Section::bending, 1, section));
    parameters.push_back(entry("D66", "N mm", &Section::bending, 2, section));
    return parameters;
}

}  // namespace swale
