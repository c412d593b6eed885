#include "solver/design/single_change.h"

#include "mesh/idler_set.h"
#include "solver/design/arrangement.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <memory>
#include <numbers>

namespace swale {

namespace {

// What can be done in a shutdown, own choice.
constexpr double move_of_distance = 0.1, raise_of_depth = 0.25;
constexpr double worth_doing = 1;  // [mm]
constexpr double degree = std::numbers::pi / 180;
const std::string place_name = "pulley place", lift_name = "pulley lift";

// The sets stand still: heights that follow from the pulley's are those of before.
void move_pulley(TransitionLayout& layout, double distance) {
    const double by = distance - layout.distance;
    for (Station& station : layout.stations) {
        station.lift = layout.lift_of(station);
        station.at += by;
    }
    layout.distance = distance;
}

void raise_pulley(TransitionLayout& layout, double lift) {
    for (Station& station : layout.stations) station.lift = layout.lift_of(station);
    layout.pulley.lift = lift;
}

Parameter of_layout(const std::string& name, double (*value)(const TransitionLayout&), void (*set)(TransitionLayout&, double)) {
    return {name,
            "mm",
            1e-3,
            false,
            [=](const TransitionCase& c, const TensionState&) { return value(c.layout); },
            [=](TransitionCase& c, TensionState&, double to) { set(c.layout, to); }};
}

void set_height(TransitionLayout& layout, double height) {
    auto moved = std::make_shared<MeasuredSet>(*layout.measured.front());
    moved->height = height;
    layout.measured.front() = std::move(moved);
}

// To the side where more is left to first order; up and away where nothing is known.
double side_of(const std::string& parameter, const std::vector<Lever>& levers) {
    const auto lever = std::ranges::find(levers, parameter, &Lever::parameter);
    return lever != levers.end() && lever->slope < 0 ? -1 : 1;
}

SingleChange moved(const TransitionCase& transition, const SizingBounds& bounds, const std::vector<Lever>& levers) {
    SingleChange change{"", transition};
    const double distance = transition.layout.distance, step = move_of_distance * distance * side_of(place_name, levers);
    const double to =
        std::clamp(std::round(distance + step), std::min(bounds.shortest, distance), std::max(bounds.longest, distance));
    move_pulley(change.transition.layout, to);
    change.name = fmt::format("pulley {:.0f} mm {}", std::abs(to - distance), to > distance ? "farther away" : "nearer");
    return change;
}

SingleChange raised(const TransitionCase& transition, const SizingBounds& bounds, const std::vector<Lever>& levers) {
    SingleChange change{"", transition};
    const double lift = transition.layout.pulley.lift;
    const double step = raise_of_depth * transition.layout.trough_depth() * side_of(lift_name, levers);
    const double to =
        std::clamp(std::round(lift + step), std::min(bounds.lowest_lift, lift), std::max(bounds.highest_lift, lift));
    raise_pulley(change.transition.layout, to);
    change.name = fmt::format("pulley {:.0f} mm {}", std::abs(to - lift), to > lift ? "higher" : "lower");
    return change;
}

// Half way between what stands at both ends of the longest stretch.
SingleChange with_set_added(const TransitionCase& transition) {
    SingleChange change{"", transition};
    TransitionLayout& layout = change.transition.layout;
    IdlerSet before{"pulley", 0, 0, layout.pulley.lift}, a = before, b = before;
    std::ptrdiff_t index = 0, k = 0;
    for (const IdlerSet& set : idler_sets(layout, 1)) {
        if (set.x - before.x > b.x - a.x) {
            a = before;
            b = set;
            index = k;
        }
        before = set;
        ++k;
    }
    for (Station& station : layout.stations) station.lift = layout.lift_of(station);
    Station added{std::round((a.x + b.x) / 2), std::round((a.angle + b.angle) / 2 / degree * 2) / 2 * degree,
                  std::round((a.lift + b.lift) / 2), Support::rolls};
    change.name = fmt::format("a set of {:.3g} deg added at {:.0f} mm", added.angle / degree, added.at);
    layout.stations.insert(layout.stations.begin() + index, std::move(added));
    return change;
}

bool first_set_measured(const TransitionLayout& layout) {
    return !layout.measured.empty() && layout.measured.front();
}

SingleChange with_first_set_right(const TransitionCase& transition) {
    SingleChange change{"set 1 put right in its place", transition};
    change.transition.layout.measured.front().reset();
    return change;
}

}  // namespace

Parameter pulley_place(const TransitionCase&) {
    return of_layout(
        place_name, [](const TransitionLayout& layout) { return layout.distance; }, move_pulley);
}

std::vector<Parameter> parameters_of_standing(const TransitionCase& transition, const TensionState& state) {
    const TransitionLayout& layout = transition.layout;
    std::vector<Parameter> parameters{pulley_place(transition),
                                      of_layout(
                                          lift_name, [](const TransitionLayout& l) { return l.pulley.lift; }, raise_pulley)};
    std::ranges::copy_if(geometry_parameters(transition), std::back_inserter(parameters),
                         [](const Parameter& p) { return p.name.starts_with("station"); });
    if (first_set_measured(layout))
        parameters.push_back(of_layout(
            "set 1 height", [](const TransitionLayout& l) { return l.measured.front()->height; }, set_height));
    if (state.total) parameters.push_back(belt_parameters(transition).front());
    return parameters;
}

std::vector<SingleChange> single_changes(const TransitionCase& transition, const SizingBounds& bounds,
                                         const std::vector<Lever>& levers) {
    const TransitionLayout& layout = transition.layout;
    std::vector<SingleChange> changes{moved(transition, bounds, levers), raised(transition, bounds, levers),
                                      with_set_added(transition)};
    if (first_set_measured(layout)) changes.push_back(with_first_set_right(transition));
    std::erase_if(changes, [&](const SingleChange& change) {
        const TransitionLayout& other = change.transition.layout;
        const bool same = other.stations.size() == layout.stations.size() && other.measured == layout.measured &&
                          std::hypot(other.distance - layout.distance, other.pulley.lift - layout.pulley.lift) < worth_doing;
        return same || !why_impossible(other).empty();
    });
    return changes;
}

}  // namespace swale
