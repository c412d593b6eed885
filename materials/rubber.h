#pragma once

#include "materials/origin.h"

namespace swale {

/// Cover rubber assumed where a designation names no grade.
inline constexpr double cover_hardness = 65;  ///< Shore A; common practice 60 to 70
inline constexpr double softest_cover = 60, hardest_cover = 70;
inline constexpr double cover_density = 1.2e-9;  ///< [t/mm^3]
inline constexpr double lightest_cover = 1.13e-9, heaviest_cover = 1.25e-9;
inline constexpr auto cover_density_source = "1.2 fabric, 1.13 to 1.25 steel cord: belt makers' catalogues, 2012";

/// Young's modulus at small strain [MPa] from Shore A hardness (Gent 1958); for 30 to 90 Shore A, some 10 % apart in practice.
double youngs_modulus(double shore_a);

/// Shear modulus of rubber, which keeps its volume: E/3 [MPa].
double shear_modulus(double youngs);

/// Stiffness modulus of a sheet that can't stretch the other way [MPa]: E/(1 - nu^2) with nu = 1/2.
double plane_strain_modulus(double youngs);

/// Pressure per indentation [N/mm^3] of a layer bonded to the carcass and pressed by a roll (mm, MPa). `contact` is the length
/// along the belt on which an idler bears; it only sets how much of the layer's side is free to bulge.
double foundation_modulus(double youngs, double layer, double contact = 6.5);

/// Foundation modulus under a layer of `cover_hardness` with its origin, and what hardness and contact leave of it.
BeltDatum foundation_datum(double layer);

}  // namespace swale
