#include "io/belt_table.h"

#include "io/section_table.h"
#include "materials/catalogue.h"
#include "materials/overrides.h"

#include <cmath>

namespace swale {
namespace {

constexpr Allowed width_range = {Kind::length, 100, 5000};
constexpr Allowed modulus_range = {Kind::force_per_length, 1, 2e6};
constexpr Allowed rating_range = {Kind::force_per_length, 0.1, 20000};
constexpr Allowed mass_range = {Kind::mass_per_area, 1, 200};
constexpr Allowed thickness_range = {Kind::length, 1, 100};
constexpr double smallest_share = 1e-3;
constexpr double any_width = 1000;  // [mm] stands in for an unreadable width, so that the designation is still looked at

Belt belt_of_catalogue(CaseTable& table, double width) {
    const std::string designation = table.required_text("designation");
    Belt belt;
    if (designation.empty()) return belt;
    try {
        belt = belt_from_designation(designation, width > 0 ? width : any_width);
    } catch (const BadDesignation& error) {
        table.reject("designation", error.what(), "a designation like \"EP 800/4 6+3\" or \"ST 1600 8+6\"");
    }
    return belt;
}

/// Either the catalogue's belt or the section outright.
Belt read_source(CaseTable& table, double width) {
    const bool outright = table.has("section");
    const bool designated = table.has("designation");
    if (!outright && !designated)
        table.reject_missing("designation", "a designation like \"EP 800/4 6+3\", or the section outright in [belt.section]");
    if (outright && designated) table.reject("designation", "both a designation and [belt.section] are given", "one of both");
    CaseTable section = table.table("section", false);
    if (outright) return belt_of_section(section);
    return designated ? belt_of_catalogue(table, width) : Belt();
}

/// A measured value of a belt by designation; `in_section`: the key that stands for it in a section; `override_with` may throw
/// std::invalid_argument.
template <class Override>
void apply_measured(CaseTable& table, const char* key, const char* in_section, const std::optional<double>& value, Belt& belt,
                    const Override& override_with) {
    if (!value) return;
    if (table.has("section"))
        return table.reject(key, std::string("a measured ") + key + " overrides a designation's",
                            std::string(in_section) + " of [belt.section] in its place");
    if (std::isnan(*value) || belt.data.empty()) return;
    try {
        override_with(belt, *value);
    } catch (const std::invalid_argument& error) {
        table.reject(key, error.what(), "a value that this belt can have");
    }
}

void apply_rating(CaseTable& table, Belt& belt) {
    const std::optional<double> rating = table.quantity("rated_tension", rating_range);
    if (rating && !std::isnan(*rating)) override_rated_tension(belt, *rating);
}

void apply_compression(CaseTable& table, Belt& belt) {
    const std::optional<double> share = table.number("compressive_stiffness", smallest_share, 1);
    if (share && !std::isnan(*share)) set_compressive_stiffness(belt, *share);
}

}  // namespace

Belt read_belt(CaseTable table) {
    const double width = table.required_quantity("width", width_range);
    Belt belt = read_source(table, width);
    belt.width = width;
    apply_measured(table, "modulus", "A11", table.quantity("modulus", modulus_range), belt, override_modulus);
    apply_rating(table, belt);
    apply_measured(table, "thickness", "thickness", table.quantity("thickness", thickness_range), belt, override_thickness);
    apply_measured(table, "mass", "mass", table.quantity("mass", mass_range), belt, override_mass);
    // After mass and width, which it depends on.
    const std::optional<double> troughability = table.number("troughability", 0.01, 0.44);
    if (!std::isnan(width)) apply_measured(table, "troughability", "D22", troughability, belt, override_troughability);
    apply_compression(table, belt);
    table.finish();
    return belt;
}

}  // namespace swale
