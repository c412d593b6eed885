#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "materials/gravity.h"
#include "materials/rubber.h"
#include "materials/troughability.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

// What the catalogue says of a designation against published rows. Tolerances are the ranges that the catalogue itself states,
// to their wider side, so what counts is the deviation beside them.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double width = 1200;
constexpr auto carcass_picture = "Carcass thickness: published against the catalogue's";

/// What is compared of one belt: ours, and both ends of the range that the catalogue states.
struct Stated {
    double value, low, high;
    std::string why;

    double tolerance() const { return std::max({value / low - 1, 1 - value / high, 0.005}); }
};

struct PublishedRow {
    const std::map<std::string, std::string>& cells;
    std::string source;
    Belt belt;
    double covers;  ///< [mm]
};

PublishedRow published_row(const std::map<std::string, std::string>& cells, const std::string& source) {
    std::string text = cells.at("designation");
    if (text.find('+') == std::string::npos) text += " 6+3";  // the row is of the carcass alone
    const Designation designation = parse_designation(text);
    return {cells, source, belt_from_designation(text, width), designation.top_cover + designation.bottom_cover};
}

/// A datum of the sheet less a share of the covers in it.
Stated stated(const PublishedRow& row, const std::string& name, double of_covers, double least_of_covers,
              double most_of_covers) {
    const BeltDatum& entry = entry_of(row.belt.data, name);
    const Range range = entry.range.value_or(Range{entry.value, entry.value, "as printed there"});
    return {entry.value - of_covers * row.covers, range.low - least_of_covers * row.covers,
            range.high - most_of_covers * row.covers, "the catalogue's range: " + range.source};
}

Stated carcass_mass(const PublishedRow& row) {
    return stated(row, "mass", 1e9 * cover_density, 1e9 * lightest_cover, 1e9 * heaviest_cover);
}

Stated rated(const PublishedRow& row) {
    const double value = *row.belt.rated_tension, strength = *row.belt.strength;
    if (row.belt.carcass == Carcass::steel_cord)
        return {value, strength / 7 - 0.5, 0.15 * strength,
                "makers rate steel cord at a seventh, in whole N/mm, to 15 % of its strength"};
    return {value, strength / 11.5, strength / 9, "makers rate plies at a ninth to 1/11.5 of their strength"};
}

/// Over rated tension, so that a rating that no designation has does not count twice.
Stated modulus(const PublishedRow& row) {
    const Stated A11 = stated(row, "A11", 0, 0, 0);
    const double tension = *row.belt.rated_tension;
    return {A11.value / tension, A11.low / tension, A11.high / tension, A11.why};
}

/// Width [mm] at which the belt under covers of 5+2 mm just has the F/L of ISO 703 that a trough of that angle asks for: 0.14
/// for 35 deg, 0.18 for 45 deg (ISO 14890, from memory, sure). With the range of D22 alone.
Stated narrowest(const PublishedRow& row) {
    const std::string& carcass = row.cells.at("designation");
    const Belt belt = belt_from_designation(carcass + " 5+2", width);
    const double ratio = row.cells.at("trough_deg") == "35" ? 0.14 : 0.18;
    const auto width_of = [&](double stiffness) {
        return std::cbrt(load_of_sag_ratio(ratio) * 1e3 * stiffness / (belt.section.mass * gravity));
    };
    const BeltDatum& D22 = entry_of(belt.data, "D22");
    return {width_of(D22.value), width_of(D22.range->low), width_of(D22.range->high),
            "the catalogue's range of D22, whose cube root it is: " + D22.range->source + "; widths are printed in steps"};
}

/// Compares one cell of the row, if there is one; `over` is another cell by which it is divided.
void compare(const PublishedRow& row, const std::string& column, const char* quantity, const char* unit, const Stated& ours,
             const std::string& over = "") {
    if (row.cells.at(column).empty()) return;
    const double reference = number(row.cells, column) / (over.empty() ? 1 : number(row.cells, over));
    const std::string note = row.cells.at("note");
    check(row.cells.at("designation") + ": " + quantity,
          {reference, unit, row.source, Kind::published_table,
           "printed as " + row.cells.at("printed") + (note.empty() ? "" : "; " + note), ours.tolerance(), ours.why},
          ours.value);
}

void compare_all(const PublishedRow& row) {
    compare(row, "thickness_mm", "thickness", "mm", stated(row, "thickness", 0, 0, 0));
    compare(row, "carcass_mm", "carcass or cord", "mm", stated(row, "thickness", 1, 1, 1));
    compare(row, "mass_kg_per_m2", "mass", "kg/m^2", stated(row, "mass", 0, 0, 0));
    compare(row, "carcass_mass_kg_per_m2", "mass of the carcass", "kg/m^2", carcass_mass(row));
    compare(row, "rated_N_per_mm", "rated tension", "N/mm", rated(row));
    if (!row.cells.at("narrowest_mm").empty())
        compare(row, "narrowest_mm", "narrowest width that troughs", "mm", narrowest(row));
    if (!row.cells.at("modulus_N_per_mm").empty())
        compare(row, "modulus_N_per_mm", "modulus over rated tension", "1", modulus(row), "rated_N_per_mm");
}

/// Published thickness of the carcass against ours, for the picture.
void draw_carcasses(const char* name, const ReferenceTable& table) {
    Curve curve{carcass_picture, name, "published, mm", "catalogue, mm", {}, true};
    for (const auto& cells : table.rows)
        if (!cells.at("carcass_mm").empty()) {
            const PublishedRow row = published_row(cells, table.source);
            curve.points.emplace_back(number(cells, "carcass_mm"), row.belt.section.thickness - row.covers);
        }
    draw(curve);
}

const char* const files[] = {
    "belts_polyester_nylon_2012.csv", "belts_polyester_2012.csv",          "belts_ep_general_heavy.csv",
    "belts_ep_selection_chart.csv",   "belts_ep_certificate_and_2001.csv", "belts_nylon_dealer.csv",
    "belts_steel_cord_2012.csv",      "belts_steel_cord_data_page.csv",    "belts_steel_cord_din.csv"};

void compare_table(const char* file, const char* name) {
    const ReferenceTable table = reference_table(file);
    REQUIRE_FALSE(table.rows.empty());
    for (const auto& cells : table.rows) compare_all(published_row(cells, table.source));
    draw_carcasses(name, table);
}

}  // namespace

TEST_CASE("EP belts against published rows of another trade's names") {
    compare_table("belts_polyester_nylon_2012.csv", "polyester/nylon, 2012");
    draw({carcass_picture, "equal", "published, mm", "catalogue, mm", {{0, 0}, {14, 14}}});
}

TEST_CASE("EE belts against the table that they were made from") {
    compare_table("belts_polyester_2012.csv", "polyester/polyester, 2012");
}

TEST_CASE("EP belts against two makers' web tables") {
    compare_table("belts_ep_general_heavy.csv", "general and heavy duty");
    compare_table("belts_ep_selection_chart.csv", "selection chart");
}

TEST_CASE("EP belts against the certificate and table from which skim and density are the mean") {
    compare_table("belts_ep_certificate_and_2001.csv", "certificate and 2001");
}

TEST_CASE("NN belts against a dealer's table") {
    compare_table("belts_nylon_dealer.csv", "nylon/nylon");
}

TEST_CASE("ST belts against the table that they are") {
    compare_table("belts_steel_cord_2012.csv", "steel cord, 2012");
}

TEST_CASE("ST belts against another maker's table and a dealer's cords of DIN 22131") {
    compare_table("belts_steel_cord_data_page.csv", "steel cord, data page");
    compare_table("belts_steel_cord_din.csv", "steel cord, DIN 22131");
}

TEST_CASE("the published rows are of sixty designations and more and hardly a carcass lies outside its range") {
    std::set<std::string> designations;
    int carcasses = 0, outside = 0;
    for (const char* file : files)
        for (const auto& cells : reference_table(file).rows) {
            const PublishedRow row = published_row(cells, file);
            designations.insert(to_string(parse_designation(row.belt.designation).carcass));
            if (cells.at("carcass_mm").empty()) continue;
            const Stated ours = stated(row, "thickness", 1, 1, 1);
            const double printed = number(cells, "carcass_mm");
            outside += printed < ours.low || printed > ours.high;
            ++carcasses;
        }
    CHECK(designations.size() >= 60);
    CHECK(carcasses > 60);
    CHECK_MESSAGE(outside <= 0.05 * carcasses, outside, " of ", carcasses);
}

TEST_CASE("cotton and aramid and solid-woven belts have no published row and say that they are from memory") {
    std::set<std::string> published;
    for (const char* file : files)
        for (const auto& cells : reference_table(file).rows)
            published.insert(published_row(cells, file).belt.construction->carcass.family);
    std::string without;
    for (const BeltFamily& family : belt_families()) {
        if (published.contains(family.code)) continue;
        without += (without.empty() ? "" : ", ") + family.code;
        const Belt belt = belt_from_designation(to_string(family.carcasses.front()) + " 4+2", width);
        for (const char* name : {"A11", "A22", "rated_tension"})
            CHECK_MESSAGE(entry_of(belt.data, name).origin.grade == "from memory", belt.designation, " ", name);
    }
    CHECK(without == "CC, TC, DPP, PVC, PVG");
    say("No published rows are held of " + without +
        " belts: what the library says of them is from memory and compared with nothing.");
}
