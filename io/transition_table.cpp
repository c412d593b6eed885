#include "io/transition_table.h"

#include "io/pulley_table.h"
#include "mesh/set_clearance.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>

namespace swale {
namespace {

constexpr Allowed distance_range = {Kind::length, 100, 100000};
constexpr Allowed angle_range = {Kind::angle, 0, 60};

std::optional<double> read_inner_angle(CaseTable& table, const Station& station, const Trough& trough) {
    const std::optional<double> angle = table.quantity("inner_angle", angle_range);
    if (angle && trough.rolls != 5)
        table.reject("inner_angle", "this belongs to sets of five rolls", "trough.rolls = 5, or leave it out");
    else if (angle > station.angle)
        table.reject("inner_angle", "the inner wings stand steeper than the outer ones", "up to the set's angle");
    return angle;
}

Station read_station(CaseTable& table, const Trough& trough) {
    Station station;
    station.at = table.required_quantity("at", distance_range);
    station.angle = table.required_quantity("angle", angle_range);
    station.lift = table.quantity("lift", lift_range);
    station.support = read_support(table);
    station.inner_angle = read_inner_angle(table, station, trough);
    if (station.support == Support::held && trough.rolls != 3)
        table.reject("support", "a held profile is that of three rolls", "\"rolls\"");
    return station;
}

/// Its rolls can't stand in the rolls of the set before, nor in those of the first full set.
void check_place(CaseTable& table, const Station& station, double previous, const TransitionLayout& layout) {
    const double clear = clear_of_rolls(layout.trough);
    if (station.at >= layout.distance)
        table.reject("at", "the set stands beyond the transition", "between the pulley and the first full set");
    else if (station.at > layout.distance - clear)
        table.reject("at", "the set stands in the first full set",
                     "a roll diameter or more before it, and the centre roll's offset");
    if (station.at <= previous)
        table.reject("at", "the sets are not in order from the pulley", fmt::format("more than {} mm", previous));
    else if (station.at < previous + clear)
        table.reject("at", "the set stands in the one before", fmt::format("{} mm or more", previous + clear));
}

void check_pulley(CaseTable& table, const std::string& key, double at, double lift, Support support,
                  const TransitionLayout& layout) {
    if (stands_in_pulley(layout, at, lift, support))
        table.reject(key, "the rolls stand in the pulley", "a place clear of the pulley");
}

}  // namespace

void read_transition(CaseTable& table, TransitionLayout& layout) {
    layout.distance = table.required_quantity("distance", distance_range);
    check_pulley(table, "distance", layout.distance, 0, layout.trough.support, layout);
    double previous = -layout.trough.roll_diameter;
    for (CaseTable& idlers : table.tables("idlers")) {
        const Station station = read_station(idlers, layout.trough);
        check_place(idlers, station, previous, layout);
        check_pulley(idlers, "at", station.at, layout.lift_of(station), station.support, layout);
        idlers.finish();
        layout.stations.push_back(station);
        previous = station.at;
    }
    table.finish();
}

}  // namespace swale
