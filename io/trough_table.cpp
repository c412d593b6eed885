#include "io/trough_table.h"

#include "io/pulley_table.h"
#include "mesh/idler_series.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {
namespace {

constexpr Allowed angle_range = {Kind::angle, 0, 60};
constexpr Allowed roll_length_range = {Kind::length, 20, 4000};
constexpr Allowed gap_range = {Kind::length, 0, 100};
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

double default_roll_length(CaseTable& table, double belt_width) {
    const std::optional<double> length = standard_roll_length(belt_width);
    if (!length && !std::isnan(belt_width))
        table.reject_missing("centre_roll", "a length; the standard series covers belts from 400 mm to 2400 mm only");
    return length.value_or(std::numeric_limits<double>::quiet_NaN());
}

void read_rolls(CaseTable& table, double belt_width, Trough& trough) {
    const std::optional<double> centre = table.quantity("centre_roll", roll_length_range);
    trough.centre_roll = centre ? *centre : default_roll_length(table, belt_width);
    trough.wing_roll = table.quantity("wing_roll", roll_length_range).value_or(trough.centre_roll);
    trough.roll_gap = table.quantity("roll_gap", gap_range).value_or(default_gap);
    trough.roll_end_radius = table.quantity("roll_end_radius", end_radius_range).value_or(default_end_radius);
    trough.roll_diameter = table.quantity("roll_diameter", diameter_range).value_or(default_diameter);
    if (trough.roll_end_radius > std::min({trough.roll_diameter, trough.centre_roll, trough.wing_roll}) / 2)
        table.reject("roll_end_radius", "the rounding is larger than the roll", "up to half the roll's diameter and length");
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

void check_roll_count(CaseTable& table) {
    const std::optional<int> rolls = table.integer("rolls", 1, 9);
    if (rolls && *rolls != 3) table.reject("rolls", "only sets of three rolls are computed", "3");
}

}  // namespace

Trough read_trough(CaseTable& table, double belt_width) {
    Trough trough;
    trough.angle = table.required_quantity("angle", angle_range);
    check_roll_count(table);
    read_rolls(table, belt_width, trough);
    trough.spacing = table.quantity("spacing", spacing_range).value_or(default_spacing);
    trough.support = read_support(table);
    trough.sets = read_sets(table, trough.support);
    trough.flat_width = table.quantity("flat_width", flat_range);
    trough.junction_radius = table.quantity("junction_radius", junction_radius_range).value_or(trough.junction_radius);
    return trough;
}

}  // namespace swale
