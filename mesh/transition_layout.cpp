#include "mesh/transition_layout.h"

#include "mesh/measured_set.h"

#include <algorithm>
#include <cmath>

namespace swale {

std::vector<double> TransitionLayout::junctions() const {
    if (trough.rolls == 5) return {junction(), junction() + trough.inner_roll + trough.roll_gap};
    return {junction()};
}

std::vector<Facet> TransitionLayout::facets(double angle, double inner_angle) const {
    std::vector<Facet> facets;
    double begin = 0;
    const auto up_to = [&](double end, double of_roll) {
        facets.push_back({begin, end, of_roll});
        begin = end;
    };
    if (trough.rolls > 2) up_to(junction(), 0);
    if (trough.rolls == 5) up_to(junctions().back(), inner_angle);
    up_to(belt_width / 2, angle);
    return facets;
}

double TransitionLayout::inner_angle_of(const Station& station) const {
    const double in_proportion = trough.angle > 0 ? station.angle * trough.inner_angle / trough.angle : 0;
    return station.inner_angle.value_or(in_proportion);
}

bool TransitionLayout::same_left_and_right() const {
    const auto alike = [](const std::shared_ptr<const MeasuredSet>& set) { return !set || swale::same_left_and_right(*set); };
    return !(std::abs(trough.wing_roll_right.value_or(trough.wing_roll) - trough.wing_roll) > 0) &&
           std::ranges::all_of(stations, alike, &Station::measured) && std::ranges::all_of(measured, alike);
}

bool TransitionLayout::any_measured() const {
    const auto is = [](const std::shared_ptr<const MeasuredSet>& set) { return set != nullptr; };
    return std::ranges::any_of(stations, is, &Station::measured) || std::ranges::any_of(measured, is);
}

double TransitionLayout::trough_depth() const {
    double depth = 0;
    for (const Facet& facet : facets()) depth += (facet.end - facet.begin) * std::sin(facet.angle);
    return depth;
}

}  // namespace swale
