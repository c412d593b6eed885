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

void apply_modulus(CaseTable& table, Belt& belt) {
    const std::optional<double> modulus = table.quantity("modulus", modulus_range);
    if (!modulus) return;
    if (table.has("section"))
        return table.reject("modulus", "a modulus overrides a designation's", "A11 of [belt.section] in its place");
    if (std::isnan(*modulus) || belt.data.empty()) return;
    try {
        override_modulus(belt, *modulus);
    } catch (const std::invalid_argument& error) {
        table.reject("modulus", error.what(), "a modulus that keeps the section positive definite");
    }
}

void apply_rating(CaseTable& table, Belt& belt) {
    const std::optional<double> rating = table.quantity("rated_tension", rating_range);
    if (rating && !std::isnan(*rating)) override_rated_tension(belt, *rating);
}

}  // namespace

Belt read_belt(CaseTable table) {
    const double width = table.required_quantity("width", width_range);
    Belt belt = read_source(table, width);
    belt.width = width;
    apply_modulus(table, belt);
    apply_rating(table, belt);
    if (table.has("troughability"))
        table.reject("troughability", "no bending stiffness is computed from it yet",
                     "leave it out, or give the stiffness as D22 of [belt.section]");
    table.finish();
    return belt;
}

}  // namespace swale
