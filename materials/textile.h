#pragma once

#include "materials/family.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One ply of a trade's fabric.
struct Ply {
    int strength;               ///< [N/mm]
    double thickness;           ///< with its own skim [mm]
    bool rounded_only = false;  ///< sold under the nominal strengths alone: 630/4, not 640/4
};

/// A number of a fabric with its origin and what is left open of it.
struct Estimate {
    double value = 0, low = 0, high = 0;
    Origin origin;
    std::string range_source;
};

/// All that tells one textile carcass from another; the construction is the same. A new fabric is one of these in fabrics.cpp.
struct Fabric {
    std::string code = {};     ///< "EP"
    std::string title = {};    ///< "plies with polyester warp and polyamide weft"
    std::string example = {};  ///< "EP 800/4 6+3"
    std::vector<Ply> plies = {};
    std::string ply_source = {};
    int fewest_plies = 2, most_plies = 6;
    std::vector<int> nominal_strengths = {};  ///< of whole belts, besides ply strength x plies [N/mm]
    Origin rated = {};                        ///< of a tenth of the breaking strength as rated tension
    Estimate skim = {};                       ///< between carcass and covers beyond the plies' own [mm]
    double thinnest_cover = 1;                ///< of the makers' tables [mm]
    double density = 0;                       ///< of the carcass [t/mm^3]
    std::string density_source = {};
    Estimate along = {};   ///< A11 over breaking strength
    Estimate across = {};  ///< A22 over breaking strength
    Estimate shear = {};   ///< A66 over carcass thickness [MPa]
    Carcass carcass = Carcass::textile;
    std::optional<Estimate> bending = {};  ///< of the carcass across, over its own thickness [MPa]; absent: A22 spread over it
};

/// What a designation says of the belt's build. Lengths in mm.
struct PlyConstruction {
    int ply_strength = 0;      ///< of the trade's ply: 160 for EP 630/4 [N/mm]
    double ply_thickness = 0;  ///< with its skim
    double carcass_thickness = 0;
    double thickness = 0;  ///< with covers
};

/// Plies and thicknesses of a belt of this fabric. Of a measured thickness [mm] the covers have what the designation says,
/// plies and skim the rest. Throws std::invalid_argument if nothing is left for them.
PlyConstruction ply_construction(const Fabric& fabric, const Designation& designation, std::optional<double> thickness = {});

/// The belts that are made of it. Breaking strength, plies and covers fix the section; moduli are those of the trade's middle,
/// to be overridden by what was measured.
BeltFamily textile_family(const Fabric& fabric);

}  // namespace swale
