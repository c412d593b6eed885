#include "materials/steel_cord.h"

#include "materials/data_sheet.h"
#include "materials/rubber.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace swale {
namespace {

constexpr auto table = "a belt maker's catalogue of steel-cord belts, 2012, p. 71";
constexpr auto data_page = "another belt maker's technical data page of steel-cord belts, Table 3";
// ST 500, 630 and 2800 are types of that page alone, which has cords and rating. It makes ST 500, 630 and 800 of one cord, so
// the pitch is the 15 mm of DIN 22131's ST 800 (a belt dealer's page) x 800 over the strength; of ST 2800 it follows from the
// strength x pitch / diameter^2 of that page's ST 2500 and 3150, 752 N/mm^2. Modulus 72 x strength, as every row of the table;
// mass of cords 0.6 full of steel (7.85 g/cm^3) with rubber (1.2) between them, which meets the rows of the table within 12 %.
constexpr bool half_derived = false;
constexpr std::array<CordLayer, 18> layers{{{500, 72, 3.7, 24.0, 36000, 6.0, half_derived},
                                            {630, 90, 3.7, 19.0, 45360, 6.4, half_derived},
                                            {800, 120, 3.6, 17.5, 58000, 6.8},
                                            {1000, 150, 3.6, 13.9, 72000, 7.4},
                                            {1250, 187, 5.2, 21.7, 90000, 10.3},
                                            {1600, 240, 5.2, 16.9, 115000, 11.3},
                                            {2000, 300, 5.2, 13.5, 144000, 12.6},
                                            {2500, 375, 5.2, 10.9, 180000, 14.2},
                                            {2800, 400, 7.2, 14.0, 201600, 18.8, half_derived},
                                            {3150, 472, 8.0, 18.5, 227000, 20.4},
                                            {3500, 525, 8.0, 16.6, 252000, 21.5},
                                            {4000, 600, 9.2, 19.1, 288000, 24.6},
                                            {4500, 675, 10.0, 20.5, 324000, 27.0},
                                            {5000, 750, 11.0, 20.8, 360000, 31.0},
                                            {5400, 810, 11.0, 19.4, 389000, 32.5},
                                            {6000, 900, 12.4, 21.6, 432000, 36.4},
                                            {6500, 975, 12.4, 20.1, 468000, 38.4},
                                            {7000, 1049, 12.4, 18.8, 504000, 40.3}}};

constexpr double steel_modulus = 210e3;  ///< of the wires [MPa]
constexpr double nu12 = 0.5;             ///< rubber keeps its volume
constexpr double nu12_least = 0.3;
/// Rating of steel cord over its breaking strength: that data page, that table.
constexpr double lowest_rating = 1 / 7.0, highest_rating = 0.15;
/// Of a mass that is derived.
constexpr double mass_scatter = 0.12;

Origin of_cords(const CordLayer& cords, const std::string& derived) {
    return cords.of_one_table ? Origin{"published", table} : Origin{"derived", derived};
}

std::string cord_source(const CordLayer& cords) {
    return cords.of_one_table ? table : data_page;
}

// Cords as thick as a measured thickness leaves them. The strength is given, hence the steel per width: pitch and diameter^2 go
// together, rubber fills the rest.
CordLayer cords_within(const Designation& belt, const std::optional<double>& thickness) {
    CordLayer cords = cord_layer(belt.carcass.strength);
    if (!thickness) return cords;
    const double diameter = carcass_within(*thickness, belt.top_cover + belt.bottom_cover);
    const double pitch = cords.pitch * std::pow(diameter / cords.diameter, 2);
    if (diameter >= pitch)
        throw std::invalid_argument(
            fmt::format("thickness of {:.3g} mm: with these covers cords of that strength would overlap", *thickness));
    cords.mass += 1e9 * cover_density * (diameter - cords.diameter);
    cords.diameter = diameter;
    cords.pitch = pitch;
    return cords;
}

/// Thickness of plain rubber as soft across as the belt [mm]: between the cords only the gaps give, so the cord layer counts as
/// d / (1 - share of the cords), share = area of a cord over d x pitch.
double rubber_thickness(const CordLayer& cords, double covers) {
    const double share = std::numbers::pi / 4 * cords.diameter / cords.pitch;
    return covers + cords.diameter / (1 - share);
}

/// Bending stiffness per width [N mm] of cords whose wires slide freely on each other, the lower bound.
double cord_bending(const CordLayer& cords) {
    // n wires of diameter d/m: n E pi (d/m)^4 / 64; 7x7 cords up to 6 mm, 7x19 above (a belt maker's technical data page, Table
    // 3)
    const bool thin = cord_layer(cords.strength).diameter < 6;  // of the type, however thick it was measured
    const double wires = thin ? 49 : 133;
    const double wire = cords.diameter / (thin ? 9 : 15);
    return wires * steel_modulus * std::numbers::pi * std::pow(wire, 4) / 64 / cords.pitch;
}

// No-slip bound of a cord's bending stiffness per width [N mm]: a round bar of the cord's stiffness along, A11 d^2/16.
double stuck_cord_bending(const CordLayer& cords) {
    return cords.modulus * cords.diameter * cords.diameter / 16;
}

/// What hardness and memory leave of a modulus of rubber, over its value for rubber as thick as the belt.
struct RubberRange {
    double low, high;  // [MPa] times the belt's thickness
};

RubberRange across_range(double rubber, double thickness) {
    return {std::min(5 * thickness, plane_strain_modulus(youngs_modulus(softest_cover)) * rubber),
            std::max(10 * thickness, plane_strain_modulus(youngs_modulus(hardest_cover)) * rubber)};
}

RubberRange shear_range(double rubber, double thickness) {
    return {std::min(1 * thickness, shear_modulus(youngs_modulus(softest_cover)) * rubber),
            std::max(3 * thickness, shear_modulus(youngs_modulus(hardest_cover)) * rubber)};
}

constexpr auto across_open = "rubber of 60 to 70 Shore A, or 5 to 10 MPa x thickness from memory (not sure): the wider";
constexpr auto shear_open = "rubber of 60 to 70 Shore A, or 1 to 3 MPa x thickness from memory (not sure): the wider";
constexpr auto contraction_open = "nu12 of 0.3 to 0.5, from memory (not sure)";

DataSheet membrane_data(const CordLayer& cords, double covers) {
    const double youngs = youngs_modulus(cover_hardness);
    const double rubber = rubber_thickness(cords, covers), thickness = cords.diameter + covers;
    const double across = plane_strain_modulus(youngs) * rubber;
    const RubberRange open = across_range(rubber, thickness), shear = shear_range(rubber, thickness);
    return {datum("A11", cords.modulus, of_cords(cords, "72 x breaking strength, as the types of " + std::string(table))),
            ranged(datum("A22", across,
                         {"derived",
                          "rubber of 65 Shore A held along by the cords, 4/3 E, with the gaps alone giving in the cord layer"}),
                   open.low, open.high, across_open),
            ranged(datum("A12", nu12 * across, {"derived", "nu12 A22, nu12 = 0.5 of rubber that keeps its volume"}),
                   nu12_least * across, nu12 * across, contraction_open),
            ranged(datum("A66", shear_modulus(youngs) * rubber,
                         {"derived", "rubber of 65 Shore A, E/3, with the gaps alone giving in the cord layer"}),
                   shear.low, shear.high, shear_open)};
}

constexpr auto bending_open =
    "wires of a cord that slide freely to wires that stick (A11 d^2/16). They stick up to a curvature of friction x pi/2 x "
    "sin(lay) x strain / (d/2), with 0.2 and 15 deg (from memory, not sure) 1/(30 m) at 0.1 %: derived, as in Papailiou, IEEE "
    "Trans. Power Delivery 12 (1997), from memory (fairly sure). Pulley, sets and edges bend a belt more, so the low end is "
    "likelier";

DataSheet bending_data(const CordLayer& cords, double covers) {
    const double youngs = youngs_modulus(cover_hardness);
    const double rubber = rubber_thickness(cords, covers), thickness = cords.diameter + covers;
    const double arm = thickness * thickness / 12;
    const double across = plane_strain_modulus(youngs) * rubber * arm;
    const RubberRange open = across_range(rubber, thickness), shear = shear_range(rubber, thickness);
    return {
        ranged(datum("D11", cord_bending(cords) + across,
                     {"derived", "wires that slide freely in their cords + rubber as in D22"}),
               cord_bending(cords) + across, stuck_cord_bending(cords) + across, bending_open),
        ranged(datum("D22", across, {"derived", "A22 x thickness^2/12: rubber"}), open.low * arm, open.high * arm, across_open),
        ranged(datum("D12", nu12 * across, {"derived", "nu12 D22, nu12 = 0.5 of rubber that keeps its volume"}),
               nu12_least * across, nu12 * across, contraction_open),
        ranged(datum("D66", shear_modulus(youngs) * rubber * arm, {"derived", "A66 x thickness^2/12: rubber"}), shear.low * arm,
               shear.high * arm, shear_open)};
}

/// Of the catalogue, whatever was measured.
BeltDatum thickness_datum(const CordLayer& cords, double covers) {
    const std::string pitch =
        cords.of_one_table
            ? ""
            : fmt::format(", their pitch of {} mm derived from cords of DIN 22131 (a dealer's page)", cords.pitch);
    return ranged(datum("thickness", cords.diameter + covers,
                        {"derived", "cord diameter of " + cord_source(cords) + pitch + ", + covers"}),
                  0.86 * cords.diameter + covers, 1.35 * cords.diameter + covers,
                  "cords 0.86 to 1.35 times as thick in another maker's table and by DIN 22131 (a dealer's page); with them "
                  "go mass, A22, A66 and D");
}

BeltDatum mass_datum(const CordLayer& cords, double covers) {
    const double layer = cords.mass * 1e-9, open = cords.of_one_table ? 0 : mass_scatter * layer;  // kg/m^2 to t/mm^2
    const std::string carcass = cords.of_one_table ? table : "cords 0.6 full of steel with rubber between them (derived)";
    return ranged(
        datum("mass", layer + cover_density * covers, {"derived", "carcass of " + carcass + ", + covers of 1.2 kg/m^2 per mm"}),
        layer - open + lightest_cover * covers, layer + open + heaviest_cover * covers,
        std::string("covers of 1.13 to 1.25 kg/m^2 per mm: ") + table + (cords.of_one_table ? "" : "; 12 % of the carcass"));
}

BeltDatum rated_datum(const CordLayer& cords) {
    const double rated = cords.rated_tension;
    const std::string source = cords.of_one_table ? std::string(table) + ": 15 % of the breaking strength"
                                                  : std::string(data_page) + ": a seventh of the breaking strength";
    return ranged(datum("rated_tension", rated, {"published", source}), std::min(rated, lowest_rating * cords.strength),
                  std::max(rated, highest_rating * cords.strength),
                  "makers rate steel cord at a seventh to 15 % of its breaking strength");
}

DataSheet body_data(const Designation& belt, const CordLayer& cords) {
    const double covers = belt.top_cover + belt.bottom_cover;
    return {thickness_datum(cord_layer(belt.carcass.strength), covers),
            datum("underside", belt.bottom_cover + cords.diameter / 2, {"derived", "bottom cover + half cord"}),
            mass_datum(cords, covers), foundation_datum(belt.bottom_cover), rated_datum(cords)};
}

DataSheet steel_cord_data_sheet(const Designation& designation, const Measured& measured) {
    const CordLayer cords = cords_within(designation, measured.thickness);
    const double covers = designation.top_cover + designation.bottom_cover;
    DataSheet sheet = membrane_data(cords, covers);
    for (BeltDatum& entry : bending_data(cords, covers)) sheet.push_back(std::move(entry));
    for (BeltDatum& entry : body_data(designation, cords)) sheet.push_back(std::move(entry));
    return sheet;
}

}  // namespace

const CordLayer& cord_layer(int strength) {
    const auto* found =
        std::find_if(layers.begin(), layers.end(), [&](const CordLayer& cords) { return cords.strength == strength; });
    if (found == layers.end()) throw std::out_of_range("no known cords for ST " + std::to_string(strength));
    return *found;
}

BeltFamily steel_cord_family() {
    std::vector<CarcassCode> known;
    for (const CordLayer& cords : layers) known.push_back({"ST", cords.strength, std::nullopt});
    return {"ST", "steel cords in one layer", "ST strength top+bottom, as in ST 1600 8+6", Carcass::steel_cord, known,
            3,  // thinner covers leave the cords bare to damage: common practice
            40,   steel_cord_data_sheet};
}

}  // namespace swale
