#include "materials/fabrics.h"

#include <algorithm>
#include <stdexcept>

namespace swale {
namespace {

std::string ply_page() {
    return "a belt maker's product page (multi-ply specification)";
}
std::string fabric_catalogue() {
    return "a belt maker's catalogue of fabric belts, 2012, pp. 15 and 21";
}
std::string not_sure() {
    return "from memory (not sure)";
}
std::string density_of_ep() {
    return "carcass 1.35 as of EP belts";
}

/// Nominal strengths of whole belts [N/mm]: the R10 series of ISO 14890, from memory (sure).
std::vector<int> r10() {
    return {200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150};
}

Origin rated_by_makers() {
    return {"published", "breaking strength / 10: a belt maker's technical table, 2001; others rate at a ninth to 1/11.5"};
}

Origin rated_by_dealer() {
    return {"published", "breaking strength / 10: a belt dealer's product page of nylon-nylon belts, 1/10.2"};
}

Origin rated_by_practice() {
    return {"published", "breaking strength / 10: a belt maker's page, a ninth to a tenth for textile"};
}

/// Of a fabric of which no maker's rating is held.
Origin rated_as_others() {
    return {"from memory",
            "fairly sure: breaking strength / 10 as of other plies; no published rating of this carcass is held"};
}

/// The mean that brings the EP plies to a certificate of EP 630/4 5+2 (11.4 mm, 14.73 kg/m^2; filed with an environmental
/// authority, 2020) and to five two-ply belts of a belt maker's technical table, 2001, with a carcass of 1.35: single belts
/// leave 0.6 to 1.2 mm and 1.28 to 1.52.
Estimate usual_skim() {
    return {0.9,
            0,
            1.2,
            {"derived", "0.9 mm skim"},
            "skim of 0 (a dealer's table of NN carcasses) to 1.2 mm (six published EP belts)"};
}

Estimate polyamide_weft() {
    return {2.5,
            1.6,
            3.3,
            {"derived",
             "2.5 x breaking strength: polyamide weft of half the warp's strength, modulus 5 x its strength "
             "(from memory, not sure)"},
            "weft of 0.40 to 0.55 of the warp's strength, 4 to 6 x that: " + not_sure()};
}

Estimate usual_shear() {
    return {60,
            20,
            100,
            {"from memory", "not sure: tens of MPa x carcass thickness, here 60 MPa"},
            "tens of MPa, taken as 20 to 100, x carcass thickness: " + not_sure()};
}

Fabric polyester_polyamide() {
    return {.code = "EP",
            .title = "plies with polyester warp and polyamide weft",
            .example = "EP 800/4 6+3",
            .plies = {{100, 0.80},
                      {125, 0.85},
                      {150, 0.90},
                      {160, 0.93, true},  // in a belt certificate of 2020 without its thickness
                      {200, 1.05},
                      {250, 1.25},
                      {300, 1.35},
                      {315, 1.395, true},  // in the trade
                      {350, 1.50},
                      {400, 1.80},
                      {500, 2.00}},
            .ply_source = ply_page() + ", EP160 and EP315 interpolated",
            .nominal_strengths = r10(),
            .rated = rated_by_makers(),
            .skim = usual_skim(),
            .density = 1.35e-9,
            .density_source = "carcass 1.35 by a belt certificate, 2020, and a maker's table, 2001, which are met within 5 %",
            .along = {10,
                      7,
                      12,
                      {"derived", "10 x breaking strength, the middle of its range"},
                      "7 to 12 x a strength of ten times the rated tension: " + fabric_catalogue() +
                          ", moduli of 69 to 119 x rated"},
            .across = polyamide_weft(),
            .shear = usual_shear()};
}

Fabric polyamide() {
    return {.code = "NN",
            .title = "plies of polyamide (nylon) both ways",
            .example = "NN 500/4 5+2",
            .plies = {{100, 0.75},
                      {125, 0.775, true},
                      {150, 0.80},
                      {160, 0.82, true},
                      {200, 0.90},
                      {250, 1.15},
                      {300, 1.25},
                      {315, 1.28, true},
                      {400, 1.45},
                      {500, 1.55}},
            .ply_source = ply_page() + ", NN125, NN160 and NN315 interpolated",
            .nominal_strengths = r10(),
            .rated = rated_by_dealer(),
            .skim = usual_skim(),
            .density = 1.35e-9,
            .density_source = density_of_ep(),
            .along = {5,
                      4,
                      6,
                      {"from memory", "fairly sure: 4 to 6 x breaking strength"},
                      "4 to 6 x breaking strength, from memory (fairly sure); 2.5 % at a tenth of the strength (a belt "
                      "maker's page) is a secant of 4 x"},
            .across = polyamide_weft(),
            .shear = usual_shear()};
}

Fabric polyester() {
    return {.code = "EE",
            .title = "plies of polyester both ways",
            .example = "EE 800/4 6+3",
            .plies = {{200, 1.25}, {250, 1.52}, {300, 1.78}, {315, 1.86, true}, {350, 2.05}},
            .ply_source =
                fabric_catalogue() + ", carcasses of 2 to 6 plies of 200 and 350 N/mm (ten times rated), others interpolated",
            .nominal_strengths = r10(),
            .rated = rated_by_practice(),
            .skim = {0.5, 0, 0.9, {"derived", "0.5 mm skim"}, "skim of 0 to 0.9 mm in the carcasses of that catalogue"},
            .density = 1.10e-9,
            .density_source = "carcass 1.10: " + fabric_catalogue() + ", 1.07 to 1.18",
            .along = {10.7,
                      10.3,
                      12.2,
                      {"derived", "10.7 x breaking strength: " + fabric_catalogue() + ", 103 to 110 x rated tension"},
                      "103 to 110 x rated tension (" + fabric_catalogue() + "), rated at a tenth to a ninth of the strength"},
            .across = {5,
                       2.8,
                       6.6,
                       {"derived",
                        "5 x breaking strength: polyester weft of half the warp's strength, as stiff as the warp (from "
                        "memory, not sure)"},
                       "weft of 0.40 to 0.55 of the warp's strength, 7 to 12 x that: " + not_sure()},
            .shear = usual_shear(),
            .bending = Estimate{
                180,
                90,
                400,
                {"derived",
                 "carcass of 180 MPa over its own thickness + cover rubber: that catalogue's minimum widths for troughing to "
                 "35 deg, p. 14, taken as F/L of 0.14 under covers of 5+2; single belts 126 to 294"},
                "half of it, since a minimum width is printed in steps, to 400 MPa, the most of that catalogue's belts"}};
}

/// Cotton weft; the warp differs.
Fabric cotton_plies() {
    return {.ply_source = ply_page(),
            .rated = rated_as_others(),
            .skim = usual_skim(),
            .density = 1.35e-9,
            .density_source = density_of_ep(),
            .across = {3,
                       2,
                       4.4,
                       {"from memory",
                        "not sure: 3 x breaking strength, cotton weft of half the warp's strength, modulus 6 x its strength"},
                       "weft of 0.40 to 0.55 of the warp's strength, 5 to 8 x that: " + not_sure()},
            .shear = usual_shear()};
}

Fabric cotton() {
    Fabric fabric = cotton_plies();
    fabric.code = "CC";
    fabric.title = "plies of cotton both ways, CC-56";
    fabric.example = "CC 224/4 4+2";
    fabric.plies = {{56, 1.1}};
    fabric.along = {
        6.5, 5, 8, {"from memory", "not sure: 5 to 8 x breaking strength"}, "5 to 8 x breaking strength: " + not_sure()};
    return fabric;
}

Fabric polyester_cotton() {
    Fabric fabric = cotton_plies();
    fabric.code = "TC";
    fabric.title = "plies with polyester and cotton in the warp and cotton weft, TC-70";
    fabric.example = "TC 280/4 4+2";
    fabric.plies = {{70, 1.0}};
    fabric.along = {7,
                    5,
                    10,
                    {"from memory", "not sure: between cotton (6.5) and polyester (10)"},
                    "that of cotton to that of polyester: " + not_sure()};
    return fabric;
}

/// One fabric for the whole strength, of a thickness [mm] that grows with it.
std::vector<Ply> one_ply(const std::vector<int>& strengths, double least, double per_strength) {
    std::vector<Ply> plies;
    for (int strength : strengths) plies.push_back({strength, least + per_strength * strength});
    return plies;
}

Fabric aramid() {
    return {.code = "DPP",
            .title = "one straight-warp fabric of aramid with polyamide weft and binder",
            .example = "DPP 1250/1 6+4",
            .plies = one_ply({630, 800, 1000, 1250, 1400, 1600, 1800, 2000, 2500, 3150}, 1, 1e-3),
            .ply_source = "1 mm + 1 mm per 1000 N/mm of strength, " + not_sure(),
            .fewest_plies = 1,
            .most_plies = 1,
            .rated = rated_as_others(),
            .skim = usual_skim(),
            .thinnest_cover = 2,
            .density = 1.25e-9,
            .density_source = "carcass 1.25 " + not_sure(),
            .along = {35,
                      30,
                      40,
                      {"from memory", "not sure: 30 to 40 x breaking strength"},
                      "30 to 40 x breaking strength: " + not_sure()},
            .across = {1,
                       0.5,
                       2,
                       {"from memory", "not sure: polyamide weft of a fifth of the warp's strength, modulus 5 x its strength"},
                       "weft of 0.1 to 0.4 of the warp's strength, 5 x that: " + not_sure()},
            .shear = usual_shear(),
            .carcass = Carcass::aramid};
}

/// Types 680 S to 2500 S of the underground mining trade and the R10 series: from memory (fairly sure).
Fabric solid_woven(const std::string& code, const std::string& covers, const std::string& example, double thinnest_cover) {
    return {.code = code,
            .title = "one solid-woven fabric soaked in PVC (1000/1 is also written 1000S), covers of " + covers,
            .example = example,
            .plies = one_ply({630, 680, 800, 1000, 1250, 1400, 1600, 1800, 2000, 2240, 2500}, 4.5, 4.2e-3),
            .ply_source = "4.5 mm + 4.2 mm per 1000 N/mm of strength, " + not_sure(),
            .fewest_plies = 1,
            .most_plies = 1,
            .rated = rated_as_others(),
            .skim = {0, 0, 0, {"derived", "no skim"}, "no skim"},
            .thinnest_cover = thinnest_cover,
            .density = 1.25e-9,
            .density_source = "carcass 1.25 " + not_sure(),
            .along = {7.5,
                      6,
                      9,
                      {"from memory", "not sure: 6 to 9 x breaking strength"},
                      "6 to 9 x breaking strength: " + not_sure()},
            .across = {1.4,
                       0.8,
                       2.4,
                       {"from memory", "not sure: weft of 200 N/mm + a tenth of the warp's strength, modulus 5 x its strength"},
                       "weft of 0.18 to 0.40 of the warp's strength, 4 to 6 x that: " + not_sure()},
            .shear = usual_shear()};
}

}  // namespace

const std::vector<Fabric>& fabrics() {
    static const std::vector<Fabric> all{polyester_polyamide(),
                                         polyamide(),
                                         polyester(),
                                         cotton(),
                                         polyester_cotton(),
                                         aramid(),
                                         solid_woven("PVC", "PVC", "PVC 1000/1 1+1", 0.8),
                                         solid_woven("PVG", "rubber", "PVG 1000/1 3+3", 1)};
    return all;
}

const Fabric& fabric(const std::string& code) {
    const auto found = std::find_if(fabrics().begin(), fabrics().end(), [&](const Fabric& one) { return one.code == code; });
    if (found == fabrics().end()) throw std::out_of_range("no fabric " + code);
    return *found;
}

}  // namespace swale
