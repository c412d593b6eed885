#include "materials/steel_cord.h"

#include "materials/data_sheet.h"
#include "materials/rubber.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace swale {
namespace {

constexpr auto table = "a belt maker's catalogue of steel-cord belts, 2012, p. 71";
constexpr std::array<CordLayer, 15> layers{{{800, 120, 3.6, 17.5, 58000, 6.8},
                                            {1000, 150, 3.6, 13.9, 72000, 7.4},
                                            {1250, 187, 5.2, 21.7, 90000, 10.3},
                                            {1600, 240, 5.2, 16.9, 115000, 11.3},
                                            {2000, 300, 5.2, 13.5, 144000, 12.6},
                                            {2500, 375, 5.2, 10.9, 180000, 14.2},
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
    const bool thin = cords.diameter < 6;
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
    return {datum("A11", cords.modulus, {"published", table}),
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

DataSheet bending_data(const CordLayer& cords, double covers) {
    const double youngs = youngs_modulus(cover_hardness);
    const double rubber = rubber_thickness(cords, covers), thickness = cords.diameter + covers;
    const double arm = thickness * thickness / 12;
    const double across = plane_strain_modulus(youngs) * rubber * arm;
    const RubberRange open = across_range(rubber, thickness), shear = shear_range(rubber, thickness);
    return {
        ranged(datum("D11", cord_bending(cords) + across,
                     {"derived", "wires that slide freely in their cords + rubber as in D22"}),
               cord_bending(cords) + across, stuck_cord_bending(cords) + across,
               "wires of a cord that slide freely to wires that stick (A11 d^2/16); small curvature under tension is nearer "
               "the second: Papailiou, IEEE Trans. Power Delivery 12 (1997), from memory (fairly sure)"),
        ranged(datum("D22", across, {"derived", "A22 x thickness^2/12: rubber"}), open.low * arm, open.high * arm, across_open),
        ranged(datum("D12", nu12 * across, {"derived", "nu12 D22, nu12 = 0.5 of rubber that keeps its volume"}),
               nu12_least * across, nu12 * across, contraction_open),
        ranged(datum("D66", shear_modulus(youngs) * rubber * arm, {"derived", "A66 x thickness^2/12: rubber"}), shear.low * arm,
               shear.high * arm, shear_open)};
}

DataSheet body_data(const Designation& belt, const CordLayer& cords) {
    const double covers = belt.top_cover + belt.bottom_cover;
    const double layer = cords.mass * 1e-9;  // kg/m^2 to t/mm^2
    return {ranged(datum("thickness", cords.diameter + covers,
                         {"derived", std::string("cord diameter of ") + table + ", + covers"}),
                   0.86 * cords.diameter + covers, 1.35 * cords.diameter + covers,
                   "cords 0.86 to 1.35 times as thick in another maker's table and by DIN 22131 (a dealer's page)"),
            datum("underside", belt.bottom_cover + cords.diameter / 2, {"derived", "bottom cover + half cord"}),
            ranged(datum("mass", layer + cover_density * covers,
                         {"derived", std::string("carcass of ") + table + ", + covers of 1.2 kg/m^2 per mm"}),
                   layer + lightest_cover * covers, layer + heaviest_cover * covers,
                   std::string("covers of 1.13 to 1.25 kg/m^2 per mm: ") + table),
            foundation_datum(belt.bottom_cover),
            datum("rated_tension", cords.rated_tension,
                  {"published", std::string(table) + ": 15 % of the breaking strength; another maker rates at a seventh"})};
}

DataSheet steel_cord_data_sheet(const Designation& designation) {
    const CordLayer& cords = cord_layer(designation.carcass.strength);
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
    if (found == layers.end()) throw std::out_of_range("no published cords for ST " + std::to_string(strength));
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
