#include "io/trough_table.h"

#include "io/pulley_table.h"
#include "mesh/idler_series.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {
namespace {

constexpr Allowed angle_range = {Kind::angle, 0, 60};
constexpr Allowed roll_length_range = {Kind::length, 20, 4000};
constexpr Allowed gap_range = {Kind::length, -100, 100};
constexpr Allowed tilt_range = {Kind::angle, 0, 10};
constexpr Allowed offset_range = {Kind::length, -1000, 1000};
constexpr Allowed end_radius_range = {Kind::length, 0, 50};
constexpr Allowed diameter_range = {Kind::length, 40, 400};
constexpr Allowed spacing_range = {Kind::length, 200, 6000};
constexpr Allowed flat_range = {Kind::length, 1, 5000};
constexpr Allowed junction_radius_range = {Kind::length, 1, 2000};
constexpr int most_sets = 200;

constexpr double default_gap = 10;          // [mm] usual limit of European practice, from memory
constexpr double default_end_radius = 5;    // [mm] rollers have 3 mm or more
constexpr double default_diameter = 152.4;  // [mm] 6 in, a size of most series
constexpr double default_spacing = 1200;    // [mm] common practice

// No series of five rolls was at hand.
double default_centre_roll(CaseTable& table, double belt_width, int rolls) {
    if (rolls == 5) table.reject_missing("centre_roll", "a length; the standard series is one of three rolls");
    if (rolls != 3) return std::numeric_limits<double>::quiet_NaN();
    const std::optional<double> length = standard_roll_length(belt_width);
    if (!length && !std::isnan(belt_width))
        table.reject_missing("centre_roll", "a length; the standard series covers belts from 400 mm to 2400 mm only");
    return length.value_or(std::numeric_limits<double>::quiet_NaN());
}

// NaN where a roll is missing: no second mistake follows from it.
void read_lengths(CaseTable& table, double belt_width, Trough& trough) {
    const bool pair = trough.rolls == 2, five = trough.rolls == 5;
    const std::optional<double> centre = pair ? std::nullopt : table.quantity("centre_roll", roll_length_range);
    trough.centre_roll = centre ? *centre : default_centre_roll(table, belt_width, trough.rolls);
    if (pair && !table.has("wing_roll"))
        table.reject_missing("wing_roll", "a length; the standard series is one of three rolls");
    trough.wing_roll = table.quantity("wing_roll", roll_length_range).value_or(trough.centre_roll);
    trough.wing_roll_right = table.quantity("wing_roll_right", roll_length_range);
    if (five) trough.inner_roll = table.quantity("inner_roll", roll_length_range).value_or(trough.centre_roll);
}

double shortest_roll(const Trough& trough) {
    double shortest = std::min(trough.wing_roll, trough.wing_roll_right.value_or(trough.wing_roll));
    if (trough.rolls > 2) shortest = std::min(shortest, trough.centre_roll);
    return trough.rolls == 5 ? std::min(shortest, trough.inner_roll) : shortest;
}

void read_rolls(CaseTable& table, double belt_width, Trough& trough) {
    read_lengths(table, belt_width, trough);
    trough.roll_gap = table.quantity("roll_gap", gap_range).value_or(default_gap);
    trough.roll_end_radius = table.quantity("roll_end_radius", end_radius_range).value_or(default_end_radius);
    trough.roll_diameter = table.quantity("roll_diameter", diameter_range).value_or(default_diameter);
    if (trough.roll_end_radius > std::min(trough.roll_diameter, shortest_roll(trough)) / 2)
        table.reject("roll_end_radius", "the rounding is larger than the roll", "up to half the roll's diameter and length");
}

void read_inner_angle(CaseTable& table, Trough& trough) {
    if (trough.rolls != 5) return;
    trough.inner_angle = table.required_quantity("inner_angle", angle_range);
    if (trough.inner_angle > trough.angle)
        table.reject("inner_angle", "the inner wings stand steeper than the outer ones", "up to the trough's angle");
}

/// Rolls out of the plane of the set.
void read_planes(CaseTable& table, Trough& trough) {
    trough.wing_tilt = table.quantity("wing_tilt", tilt_range).value_or(0);
    if (trough.rolls > 2) trough.centre_offset = table.quantity("centre_offset", offset_range).value_or(0);
    const bool overlapping = trough.rolls == 3 && std::abs(trough.centre_offset) >= trough.roll_diameter;
    if (trough.roll_gap < 0 && !overlapping)
        table.reject("roll_gap", "rolls overlap only where the centre roll of three stands in a plane of its own",
                     "0 mm or more, or a centre_offset of a roll diameter or more");
    if (trough.centre_offset != 0 && std::abs(trough.centre_offset) + trough.roll_diameter > trough.spacing / 2)
        table.reject("centre_offset", "the centre roll stands nearer to the next set than to its own",
                     "less than half the spacing, by a roll diameter");
}

/// Keys of rolls that such a set has not. Those that can't be read are no second mistake.
void check_missing_rolls(CaseTable& table, int rolls) {
    const auto none = [&](const char* key, const Allowed& range, const char* allowed) {
        const std::optional<double> given = table.quantity(key, range);
        if (given && !std::isnan(*given)) table.reject(key, fmt::format("a set of {} rolls has no such roll", rolls), allowed);
    };
    if (rolls == 2) none("centre_roll", roll_length_range, "rolls = 3 or 5, or leave it out");
    if (rolls == 2) none("centre_offset", offset_range, "rolls = 3 or 5, or leave it out");
    if (rolls != 5) none("inner_roll", roll_length_range, "rolls = 5, or leave it out");
    if (rolls != 5) none("inner_angle", angle_range, "rolls = 5, or leave it out");
}

/// "auto" or a number; a held trough is the model's end and has one.
std::optional<int> read_sets(CaseTable& table, Support support) {
    const TomlNode* node = table.value("sets");
    const bool automatic = node == nullptr || (node->type == TomlNode::Type::text && node->text == "auto");
    if (automatic) return support == Support::held ? std::optional(1) : std::nullopt;
    if (node->type == TomlNode::Type::text) {
        table.reject("sets", "unknown word", "\"auto\" or a whole number from 1 to 200");
        return std::nullopt;
    }
    const std::optional<int> sets = table.integer("sets", 1, most_sets);
    if (sets && *sets > 1 && support == Support::held)
        table.reject("sets", "the belt ends at a held trough", "1, or support = \"rolls\"");
    return sets;
}

int read_roll_count(CaseTable& table) {
    const std::optional<int> rolls = table.integer("rolls", 2, 5);
    if (rolls == 4) table.reject("rolls", "no such sets are computed", "2, 3 or 5");
    return rolls == 4 ? 3 : rolls.value_or(3);
}

/// An ideal line holds the section of three rolls in one plane.
void check_held(CaseTable& table, const Trough& trough) {
    if (trough.support == Support::rolls) return;
    if (trough.rolls != 3) table.reject("rolls", "a held profile is that of three rolls", "3, or support = \"rolls\"");
    for (const char* key : {"wing_roll_right", "wing_tilt", "centre_offset"})
        if (table.has(key)) table.reject(key, "a held profile has no such rolls", "support = \"rolls\", or leave it out");
}

}  // namespace

Trough read_trough(CaseTable& table, double belt_width) {
    Trough trough;
    trough.angle = table.required_quantity("angle", angle_range);
    trough.rolls = read_roll_count(table);
    check_missing_rolls(table, trough.rolls);
    read_rolls(table, belt_width, trough);
    read_inner_angle(table, trough);
    trough.spacing = table.quantity("spacing", spacing_range).value_or(default_spacing);
    read_planes(table, trough);
    trough.support = read_support(table);
    check_held(table, trough);
    trough.sets = read_sets(table, trough.support);
    trough.flat_width = table.quantity("flat_width", flat_range);
    trough.junction_radius = table.quantity("junction_radius", junction_radius_range).value_or(trough.junction_radius);
    return trough;
}

}  // namespace swale
