#include "materials/textile.h"

#include "materials/data_sheet.h"
#include "materials/rubber.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace swale {
namespace {

/// Thickness with skim [mm] of a ply of the given strength [N/mm]: a belt maker's product page (multi-ply specification).
struct Ply {
    int strength;
    double thickness;
};
constexpr std::array<Ply, 9> plies_published{
    {{100, 0.80}, {125, 0.85}, {150, 0.90}, {200, 1.05}, {250, 1.25}, {300, 1.35}, {350, 1.50}, {400, 1.80}, {500, 2.00}}};
/// EP160 is in a published belt certificate of 2020 without its thickness, EP315 in the trade: both interpolated.
constexpr std::array<int, 2> plies_interpolated{160, 315};

/// Nominal strengths of whole belts [N/mm]: the R10 series of ISO 14890, from memory (sure).
constexpr std::array<int, 13> nominal_strengths{200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150};
/// 400/3 is sold with plies of 125 and 630/3 with 200: strength rounded by up to a sixteenth.
constexpr double rounding = 0.065;

/// Skim between carcass and covers beyond the plies' own [mm], and the carcass's density [t/mm^3]: the mean that brings the
/// plies above to a certificate of EP 630/4 5+2 (11.4 mm, 14.73 kg/m^2; filed with an environmental authority, 2020) and to
/// five two-ply belts of a belt maker's technical table, 2001. Single belts leave 0.6 to 1.2 mm and 1.28 to 1.52.
constexpr double skim = 0.9;
constexpr double carcass_density = 1.35e-9;

/// Modulus over breaking strength: along, of ISO 9856 tests; across, weft of half the warp's strength at five times strength.
constexpr double modulus_along = 10;
constexpr double modulus_across = 2.5;
constexpr double nu12 = 0.3, nu12_most = 0.5;
constexpr double shear_of_carcass = 60;  ///< [MPa]
/// Effective modulus of the carcass in bending across, over its own thickness [MPa]. With cover rubber it gives the D of 7.5 N
/// m (61 MPa over the whole thickness) that an EP 630/4 5+2 of 1 m has at a troughability F/L of 0.20; 0.14 would give 1370
/// MPa, 0.25 would give 510, and a maker's minimum widths for troughing 150 to 400 (2012, p. 14, with covers of 5+2).
constexpr double bending_of_carcass = 800, softest_carcass = 150, stiffest_carcass = 1370;

double interpolated_thickness(int strength) {
    const auto* above =
        std::find_if(plies_published.begin(), plies_published.end(), [&](const Ply& ply) { return ply.strength >= strength; });
    if (above->strength == strength) return above->thickness;
    const Ply& below = *(above - 1);
    const double part = (strength - below.strength) / static_cast<double>(above->strength - below.strength);
    return below.thickness + part * (above->thickness - below.thickness);
}

std::vector<int> ply_strengths() {
    std::vector<int> strengths(plies_interpolated.begin(), plies_interpolated.end());
    for (const Ply& ply : plies_published) strengths.push_back(ply.strength);
    return strengths;
}

double ply_misfit(int ply, int strength, int plies) {
    return std::abs(ply * plies / static_cast<double>(strength) - 1);
}

int nearest_ply(int strength, int plies) {
    const std::vector<int> known = ply_strengths();
    return *std::min_element(known.begin(), known.end(),
                             [&](int a, int b) { return ply_misfit(a, strength, plies) < ply_misfit(b, strength, plies); });
}

std::vector<CarcassCode> known_carcasses() {
    std::vector<CarcassCode> known;
    for (int plies = 2; plies <= 6; ++plies) {
        std::vector<int> strengths;
        for (int nominal : nominal_strengths)
            if (ply_misfit(nearest_ply(nominal, plies), nominal, plies) <= rounding) strengths.push_back(nominal);
        for (const Ply& ply : plies_published) strengths.push_back(ply.strength * plies);
        std::sort(strengths.begin(), strengths.end());
        strengths.erase(std::unique(strengths.begin(), strengths.end()), strengths.end());
        for (int strength : strengths) known.push_back({"EP", strength, plies});
    }
    return known;
}

constexpr auto contraction_open = "nu12 of 0.3 to 0.5 for textile, from memory (not sure)";

DataSheet membrane_data(double strength, const PlyConstruction& build) {
    const double across = modulus_across * strength, t = build.carcass_thickness;
    return {
        ranged(
            datum("A11", modulus_along * strength, {"derived", "10 x breaking strength, the middle of its range"}),
            7 * strength, 12 * strength,
            "7 to 12 x a strength of ten times the rated tension: a belt maker's catalogue of fabric belts, 2012, pp. 15 and "
            "21, moduli of 69 to 119 x rated"),
        ranged(datum("A22", across,
                     {"derived",
                      "2.5 x breaking strength: polyamide weft of half the warp's strength, modulus 5 x its strength (from "
                      "memory, not sure)"}),
               1.6 * strength, 3.3 * strength,
               "weft of 0.40 to 0.55 of the warp's strength, 4 to 6 x that: from memory (not sure)"),
        ranged(datum("A12", nu12 * across, {"from memory", "not sure: nu12 = 0.3; A12 = nu12 A22"}), nu12 * across,
               nu12_most * across, contraction_open),
        ranged(datum("A66", shear_of_carcass * t, {"from memory", "not sure: tens of MPa x carcass thickness, here 60 MPa"}),
               20 * t, 100 * t, "tens of MPa, taken as 20 to 100, x carcass thickness: from memory (not sure)")};
}

/// Bending stiffness of both covers about the carcass mid-surface [N mm].
double cover_bending(const Designation& belt, const PlyConstruction& build) {
    const double inner = build.carcass_thickness / 2;
    // D = E/(1 - nu^2) sum of (z_out^3 - z_in^3)/3
    const double moment = std::pow(inner + belt.top_cover, 3) + std::pow(inner + belt.bottom_cover, 3) - 2 * std::pow(inner, 3);
    return plane_strain_modulus(youngs_modulus(cover_hardness)) * moment / 3;
}

// Twist of a carcass that shears as in A66 through its thickness, with cover rubber of E/3 instead of 4/3 E [N mm].
double least_twist(const PlyConstruction& build, double covers) {
    return shear_of_carcass * std::pow(build.carcass_thickness, 3) / 12 + covers / 4;
}

DataSheet bending_data(const Designation& belt, const PlyConstruction& build) {
    const double covers = cover_bending(belt, build);
    const double inertia = std::pow(build.carcass_thickness, 3) / 12;
    const double carcass = bending_of_carcass * inertia, softest = softest_carcass * inertia,
                 stiffest = stiffest_carcass * inertia;
    const double across = carcass + covers;
    // Skim alone would bend alike both ways, plies alone as A11 to A22: the carcass takes the geometric mean of both ratios.
    const double plies = modulus_along / modulus_across, ratio = std::sqrt(plies);
    const double along = carcass * ratio + covers;
    const double coupling = nu12 * across;
    // D12 + 2 D66 = sqrt(D11 D22)   Huber, in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, ch. 11
    const double huber = std::sqrt(along * across), twist = (huber - coupling) / 2;
    return {
        ranged(
            datum("D11", along,
                  {"derived",
                   "as D22 with the carcass sqrt(A11/A22) times as stiff, between skim alone (1) and plies alone (A11/A22)"}),
            std::min(softest * ratio, carcass) + covers, std::max(stiffest * ratio, carcass * plies) + covers,
            "the carcass of D22's range, or skim alone to plies alone: the wider"),
        ranged(datum("D22", across,
                     {"derived",
                      "carcass of 800 MPa over its own thickness + cover rubber: ISO 703 troughability F/L of 0.20 assumed for "
                      "an EP 630/4 5+2 of 1 m"}),
               softest + covers, stiffest + covers,
               "carcass of 150 MPa by a maker's minimum widths for troughing (fabric catalogue, 2012, p. 14; they give 150 to "
               "400) to 1370 MPa of the least F/L for 35 deg, 0.14 (ISO 14890, from memory, sure)"),
        ranged(datum("D12", coupling, {"derived", "nu12 D22 with the nu12 of A12"}), coupling, nu12_most * across,
               contraction_open),
        ranged(datum("D66", twist, {"derived", "Huber's (sqrt(D11 D22) - D12)/2: Timoshenko and Woinowsky-Krieger, ch. 11"}),
               least_twist(build, covers), huber / 2,
               "a carcass that shears by A66 through its thickness, to Huber's with nu12 = 0")};
}

DataSheet body_data(const Designation& belt, const PlyConstruction& build) {
    const double covers = belt.top_cover + belt.bottom_cover;
    const std::string ply = "plies of EP" + std::to_string(build.ply_strength) +
                            " by a belt maker's product page (multi-ply specification; EP160 and EP315 interpolated)";
    return {datum("thickness", build.thickness,
                  {"derived", ply + ", 0.9 mm skim, covers; the six published belts that gave the skim are met within 6 %"}),
            datum("underside", belt.bottom_cover + build.carcass_thickness / 2, {"derived", "bottom cover + half carcass"}),
            datum("mass", cover_density * covers + carcass_density * build.carcass_thickness,
                  {"derived",
                   "covers 1.2 kg/m^2 per mm (a belt maker's fabric catalogue, 2012), carcass 1.35 by a belt "
                   "certificate, 2020, and a maker's table, 2001, which are met within 5 %"}),
            foundation_datum(belt.bottom_cover + skim / 2),
            datum("rated_tension", belt.carcass.strength / 10.0,
                  {"published", "breaking strength / 10: a belt maker's technical table, 2001"})};
}

DataSheet ep_data_sheet(const Designation& designation) {
    const PlyConstruction build = ply_construction(designation);
    DataSheet sheet = membrane_data(designation.carcass.strength, build);
    for (BeltDatum& entry : bending_data(designation, build)) sheet.push_back(std::move(entry));
    for (BeltDatum& entry : body_data(designation, build)) sheet.push_back(std::move(entry));
    return sheet;
}

}  // namespace

PlyConstruction ply_construction(const Designation& designation) {
    const int plies = designation.carcass.plies.value();
    PlyConstruction build;
    build.ply_strength = nearest_ply(designation.carcass.strength, plies);
    build.ply_thickness = interpolated_thickness(build.ply_strength);
    build.carcass_thickness = plies * build.ply_thickness + skim;
    build.thickness = build.carcass_thickness + designation.top_cover + designation.bottom_cover;
    return build;
}

BeltFamily ep_family() {
    return {"EP",
            "plies with polyester warp and polyamide weft",
            "EP strength/plies top+bottom, as in EP 800/4 6+3",
            Carcass::textile,
            known_carcasses(),
            1,  // thinnest cover of the makers' tables
            30,
            ep_data_sheet};
}

}  // namespace swale
