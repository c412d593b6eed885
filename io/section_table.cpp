#include "io/section_table.h"

#include "materials/data_sheet.h"

#include <algorithm>

namespace swale {
namespace {

constexpr Allowed thickness_range = {Kind::length, 0.5, 100};
constexpr Allowed underside_range = {Kind::length, 0, 100};
constexpr Allowed mass_range = {Kind::mass_per_area, 0, 300};
constexpr Allowed foundation_range = {Kind::foundation, 0.001, 1000};
constexpr Allowed membrane_range = {Kind::force_per_length, 0.001, 2e6};
constexpr Allowed membrane_coupling_range = {Kind::force_per_length, -2e6, 2e6};
constexpr Allowed bending_range = {Kind::moment, 1e-6, 1e6};
constexpr Allowed bending_coupling_range = {Kind::moment, -1e6, 1e6};

const Origin as_given = {"given", "[belt.section] of the case file"};

void put_law(CaseTable& table, DataSheet& sheet, const std::string& letter, const Allowed& range,
             const Allowed& coupling_range) {
    for (const char* index : {"11", "22", "12", "66"}) {
        const std::string key = letter + index;
        const bool coupling = key.ends_with("12");
        put(sheet, datum(key, table.required_quantity(key, coupling ? coupling_range : range), as_given));
    }
}

void put_underside(CaseTable& table, DataSheet& sheet, double thickness) {
    const std::optional<double> underside = table.quantity("underside", underside_range);
    if (underside && *underside > thickness)
        table.reject("underside", "the underside lies beyond the belt", "from 0 mm to the thickness");
    const Origin half = {"derived", "half the thickness"};
    put(sheet, datum("underside", underside.value_or(thickness / 2), underside ? as_given : half));
}

void put_foundation(CaseTable& table, DataSheet& sheet) {
    const std::optional<double> foundation = table.quantity("foundation", foundation_range);
    const Origin idle = {"derived", "not given: no roll touches the belt"};
    put(sheet, datum("foundation", foundation.value_or(0), foundation ? as_given : idle));
}

DataSheet read_sheet(CaseTable& table) {
    DataSheet sheet;
    const double thickness = table.required_quantity("thickness", thickness_range);
    put(sheet, datum("thickness", thickness, as_given));
    put_underside(table, sheet, thickness);
    put(sheet, datum("mass", table.required_quantity("mass", mass_range), as_given));
    put_law(table, sheet, "A", membrane_range, membrane_coupling_range);
    put_law(table, sheet, "D", bending_range, bending_coupling_range);
    put_foundation(table, sheet);
    return sheet;
}

void check_law(CaseTable& table, const Eigen::Matrix3d& law, const std::string& letter) {
    if (!law.allFinite()) return;
    const std::string why = why_not_positive_definite(law, letter);
    if (!why.empty())
        table.reject(letter + "12", "the section is not positive definite: " + why,
                     "|12| below the square root of 11 times 22");
}

bool any_rolls(const TransitionLayout& layout) {
    const auto on_rolls = [](const Station& station) { return station.support == Support::rolls; };
    return layout.pulley.support == Support::rolls || layout.trough.support == Support::rolls ||
           std::any_of(layout.stations.begin(), layout.stations.end(), on_rolls);
}

}  // namespace

Belt belt_of_section(CaseTable& table) {
    Belt belt;
    belt.carcass = table.choice<Carcass>("kind", {"textile", "steel cord", "aramid"});
    belt.data = read_sheet(table);
    belt.section = section_of(belt.data);
    check_law(table, belt.section.membrane, "A");
    check_law(table, belt.section.bending, "D");
    table.finish();
    return belt;
}

void check_foundation(CaseTable belt, const TransitionLayout& layout) {
    CaseTable section = belt.table("section", false);
    if (!any_rolls(layout) || section.has("foundation")) return;
    section.reject_missing("foundation", "a pressure per length like \"2 N/mm^3\", since rolls carry the belt");
}

}  // namespace swale
