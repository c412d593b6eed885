#pragma once

#include "materials/family.h"

namespace swale {

/// What an EP designation says of the belt's build. Lengths in mm.
struct PlyConstruction {
    int ply_strength = 0;      ///< of the trade's ply: 160 for 630/4 [N/mm]
    double ply_thickness = 0;  ///< with its skim
    double carcass_thickness = 0;
    double thickness = 0;  ///< with covers
};

/// Plies and thicknesses of an EP belt. The carcass is within 15 % of a maker's list that it was not fitted to.
PlyConstruction ply_construction(const Designation& designation);

/// Plies with polyester warp and polyamide weft. Breaking strength, plies and covers fix the section; moduli are those of the
/// trade's middle, to be overridden by what was measured.
BeltFamily ep_family();

}  // namespace swale
