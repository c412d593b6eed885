#include "materials/textile.h"

#include "materials/data_sheet.h"
#include "materials/rubber.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {
namespace {

/// 400/3 is sold with plies of 125 and 630/3 with 200: strength rounded by up to a sixteenth.
constexpr double rounding = 0.065;
constexpr double nu12 = 0.3, nu12_most = 0.5;
constexpr auto contraction_open = "nu12 of 0.3 to 0.5 for textile, from memory (not sure)";
/// Thickness of a ply from maker to maker: EP carcasses of a maker's web table of general and heavy duty.
constexpr double ply_scatter = 0.15;
/// Carcass density from maker to maker [t/mm^3]: a fabric catalogue, 2012, to a maker's technical table, 2001.
constexpr double lightest_carcass = 1.06e-9, heaviest_carcass = 1.52e-9;
/// Breaking strength over rated tension: belt makers' catalogue of 2012, web tables and data sheets.
constexpr double lowest_safety = 9, highest_safety = 11.5;

double ply_misfit(int ply, int strength, int plies) {
    return std::abs(ply * plies / static_cast<double>(strength) - 1);
}

const Ply& nearest_ply(const Fabric& fabric, int strength, int plies) {
    return *std::min_element(fabric.plies.begin(), fabric.plies.end(), [&](const Ply& a, const Ply& b) {
        return ply_misfit(a.strength, strength, plies) < ply_misfit(b.strength, strength, plies);
    });
}

std::vector<int> strengths_of(const Fabric& fabric, int plies) {
    std::vector<int> strengths;
    for (int nominal : fabric.nominal_strengths)
        if (ply_misfit(nearest_ply(fabric, nominal, plies).strength, nominal, plies) <= rounding) strengths.push_back(nominal);
    for (const Ply& ply : fabric.plies)
        if (!ply.rounded_only) strengths.push_back(ply.strength * plies);
    std::sort(strengths.begin(), strengths.end());
    strengths.erase(std::unique(strengths.begin(), strengths.end()), strengths.end());
    return strengths;
}

std::vector<CarcassCode> known_carcasses(const Fabric& fabric) {
    std::vector<CarcassCode> known;
    for (int plies = fabric.fewest_plies; plies <= fabric.most_plies; ++plies)
        for (int strength : strengths_of(fabric, plies)) known.push_back({fabric.code, strength, plies});
    return known;
}

/// An estimate times what it is counted in.
BeltDatum estimated(const std::string& name, const Estimate& estimate, double scale) {
    return ranged(datum(name, estimate.value * scale, estimate.origin), estimate.low * scale, estimate.high * scale,
                  estimate.range_source);
}

DataSheet membrane_data(const Fabric& fabric, double strength, const PlyConstruction& build) {
    const double across = fabric.across.value * strength;
    return {estimated("A11", fabric.along, strength), estimated("A22", fabric.across, strength),
            ranged(datum("A12", nu12 * across, {"from memory", "not sure: nu12 = 0.3; A12 = nu12 A22"}), nu12 * across,
                   nu12_most * across, contraction_open),
            estimated("A66", fabric.shear, build.carcass_thickness)};
}

/// Bending stiffness of both covers about the carcass mid-surface [N mm].
double cover_bending(const Designation& belt, const PlyConstruction& build) {
    const double inner = build.carcass_thickness / 2;
    // D = E/(1 - nu^2) sum of (z_out^3 - z_in^3)/3
    const double moment = std::pow(inner + belt.top_cover, 3) + std::pow(inner + belt.bottom_cover, 3) - 2 * std::pow(inner, 3);
    return plane_strain_modulus(youngs_modulus(cover_hardness)) * moment / 3;
}

/// Modulus of the carcass in bending across, over its own thickness [MPa].
Estimate carcass_bending(const Fabric& fabric, double strength, double thickness) {
    if (fabric.bending) return *fabric.bending;
    const double sheet = fabric.across.value * strength / thickness;
    return {
        sheet,
        sheet / 3,
        2 * sheet,
        {"derived",
         "carcass as one sheet of A22 over its thickness + cover rubber; of EP belts 0.7 to 2.1 times what two makers' minimum "
         "widths for troughing mean"},
        "a third, plies that slide in their skim, to twice, as EP belts of a troughability F/L of 0.20"};
}

/// `plies`: A11 over A22.
BeltDatum bending_along(double plies, const Estimate& carcass, double inertia, double covers) {
    // Skim alone would bend alike both ways, plies alone as A11 to A22: the carcass takes the geometric mean of both ratios.
    const double ratio = std::sqrt(plies);
    return ranged(
        datum("D11", carcass.value * inertia * ratio + covers,
              {"derived",
               "as D22 with the carcass sqrt(A11/A22) times as stiff, between skim alone (1) and plies alone (A11/A22)"}),
        std::min(carcass.low * ratio, carcass.value) * inertia + covers,
        std::max(carcass.high * ratio, carcass.value * plies) * inertia + covers,
        "the carcass of D22's range, or skim alone to plies alone: the wider");
}

BeltDatum bending_across(const Estimate& carcass, double inertia, double covers) {
    return ranged(datum("D22", carcass.value * inertia + covers, carcass.origin), carcass.low * inertia + covers,
                  carcass.high * inertia + covers, carcass.range_source);
}

BeltDatum twisting(const Fabric& fabric, double inertia, double covers, double huber, double coupling) {
    // Least: the carcass shears as in A66 through its thickness, cover rubber has E/3 instead of 4/3 E.
    const double least = fabric.shear.value * inertia + covers / 4;
    // D12 + 2 D66 = sqrt(D11 D22)   Huber, in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, ch. 11
    const double twist = std::max((huber - coupling) / 2, least);
    return ranged(datum("D66", twist, {"derived", "Huber's (sqrt(D11 D22) - D12)/2: Timoshenko and Woinowsky-Krieger, ch. 11"}),
                  least, std::max(huber / 2, twist),
                  "a carcass that shears by A66 through its thickness, to Huber's with nu12 = 0");
}

/// `along`: A11 over breaking strength.
DataSheet bending_data(const Fabric& fabric, const Designation& belt, const PlyConstruction& build, double along) {
    const double covers = cover_bending(belt, build), inertia = std::pow(build.carcass_thickness, 3) / 12;
    const Estimate carcass = carcass_bending(fabric, belt.carcass.strength, build.carcass_thickness);
    const BeltDatum D11 = bending_along(along / fabric.across.value, carcass, inertia, covers),
                    D22 = bending_across(carcass, inertia, covers);
    const double across = internal_value({D22}, "D22"), huber = std::sqrt(internal_value({D11}, "D11") * across);
    return {D11, D22,
            ranged(datum("D12", nu12 * across, {"derived", "nu12 D22 with the nu12 of A12"}), nu12 * across, nu12_most * across,
                   contraction_open),
            twisting(fabric, inertia, covers, huber, nu12 * across)};
}

/// Of the catalogue, whatever was measured.
BeltDatum thickness_datum(const Fabric& fabric, const Designation& belt) {
    const PlyConstruction build = ply_construction(fabric, belt);
    const double covers = belt.top_cover + belt.bottom_cover, plies = build.carcass_thickness - fabric.skim.value;
    return ranged(datum("thickness", build.thickness,
                        {"derived", "plies of " + fabric.code + std::to_string(build.ply_strength) + " by " +
                                        fabric.ply_source + ", " + fabric.skim.origin.source + ", covers"}),
                  covers + (1 - ply_scatter) * plies + fabric.skim.low, covers + (1 + ply_scatter) * plies + fabric.skim.high,
                  "15 % of the plies from maker to maker; " + fabric.skim.range_source + "; with it go mass, A66 and D");
}

BeltDatum mass_datum(const Fabric& fabric, const Designation& belt, const PlyConstruction& build) {
    const double covers = belt.top_cover + belt.bottom_cover, carcass = build.carcass_thickness;
    return ranged(
        datum("mass", cover_density * covers + fabric.density * carcass,
              {"derived", "covers 1.2 kg/m^2 per mm (" + std::string(cover_density_source) + "), " + fabric.density_source}),
        lightest_cover * covers + lightest_carcass * carcass, heaviest_cover * covers + heaviest_carcass * carcass,
        "covers of 1.13 to 1.25, carcasses of 1.06 to 1.52 kg/m^2 per mm: belt makers' catalogues, 2001 and 2012");
}

BeltDatum rated_datum(const Fabric& fabric, double strength) {
    return ranged(datum("rated_tension", strength / 10, fabric.rated), strength / highest_safety, strength / lowest_safety,
                  "makers of EP and EE belts rate at a ninth to 1/11.5 of the breaking strength");
}

DataSheet body_data(const Fabric& fabric, const Designation& belt, const PlyConstruction& build) {
    return {thickness_datum(fabric, belt),
            datum("underside", belt.bottom_cover + build.carcass_thickness / 2, {"derived", "bottom cover + half carcass"}),
            mass_datum(fabric, belt, build), foundation_datum(belt.bottom_cover + fabric.skim.value / 2),
            rated_datum(fabric, belt.carcass.strength)};
}

DataSheet data_sheet(const Fabric& fabric, const Designation& belt, const Measured& measured) {
    const PlyConstruction build = ply_construction(fabric, belt, measured.thickness);
    const double strength = belt.carcass.strength;
    const double along = measured.modulus ? *measured.modulus / strength : fabric.along.value;
    DataSheet sheet = membrane_data(fabric, strength, build);
    for (BeltDatum& entry : bending_data(fabric, belt, build, along)) sheet.push_back(std::move(entry));
    for (BeltDatum& entry : body_data(fabric, belt, build)) sheet.push_back(std::move(entry));
    return sheet;
}

}  // namespace

PlyConstruction ply_construction(const Fabric& fabric, const Designation& designation, std::optional<double> thickness) {
    const int plies = designation.carcass.plies.value();
    const Ply& ply = nearest_ply(fabric, designation.carcass.strength, plies);
    PlyConstruction build;
    build.ply_strength = ply.strength;
    build.ply_thickness = ply.thickness;
    build.carcass_thickness = plies * build.ply_thickness + fabric.skim.value;
    const double covers = designation.top_cover + designation.bottom_cover;
    if (thickness) build.carcass_thickness = carcass_within(*thickness, covers);
    build.thickness = build.carcass_thickness + covers;
    return build;
}

BeltFamily textile_family(const Fabric& fabric) {
    BeltFamily family;
    family.code = fabric.code;
    family.title = fabric.title;
    family.form = fabric.code + " strength/plies top+bottom, as in " + fabric.example;
    family.carcass = fabric.carcass;
    family.carcasses = known_carcasses(fabric);
    family.cover_min = fabric.thinnest_cover;
    family.cover_max = 30;
    family.data_sheet = [fabric](const Designation& belt, const Measured& measured) {
        return data_sheet(fabric, belt, measured);
    };
    return family;
}

}  // namespace swale
