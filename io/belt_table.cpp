#include "io/belt_table.h"

#include "io/measured_table.h"
#include "io/section_table.h"
#include "materials/catalogue.h"

#include <cmath>

namespace swale {
namespace {

constexpr Allowed width_range = {Kind::length, 100, 5000};
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

}  // namespace

Belt read_belt(CaseTable table) {
    const double width = table.required_quantity("width", width_range);
    Belt belt = read_source(table, width);
    belt.width = width;
    read_measured(table, belt);
    table.finish();
    return belt;
}

}  // namespace swale
