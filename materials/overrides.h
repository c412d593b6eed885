#pragma once

#include "materials/belt.h"

namespace swale {

/// Puts a measured modulus (ISO 9856, force per width per strain, N/mm) in the place of A11. The contraction
/// nu12 = A12/A22 stays; the D11 of plies follows as in their construction. The test's strip contracts freely, so strictly
/// A11 = modulus + A12^2/A22; that 2 % of an EP belt is left out, A12 being a guess. Throws std::invalid_argument if the
/// modulus is not positive or the section would not be positive definite. The belt is unchanged then.
void override_modulus(Belt& belt, double modulus);

/// Modulus [N/mm] to a tenth of the breaking strength at the elongation there (ISO 283): secant of a first loading, with
/// permanent and thermal stretch in it, so that the modulus of ISO 9856 is not lower. Throws std::invalid_argument if the
/// belt's strength is not known or the elongation is not positive.
double secant_modulus(const Belt& belt, double elongation);

/// Puts that secant in the place of A11, with the catalogue's upper end left open. For a certificate without a modulus. Throws
/// as secant_modulus and override_modulus do.
void override_elongation(Belt& belt, double elongation);

/// Puts the given working tension per width [N/mm] in the place of the catalogue's. Throws std::invalid_argument if it is not
/// positive.
void override_rated_tension(Belt& belt, double tension);

/// Puts a measured mass per area [t/mm^2] in the place of the catalogue's. Throws std::invalid_argument if it is not positive.
void override_mass(Belt& belt, double mass);

/// Puts a measured thickness [mm] in the place of the catalogue's. What differs is the carcass's (derived: the designation
/// gives the covers, plies and skim or cords are what differs from maker to maker), so mass, A66, D and underside follow unless
/// they are given. Throws std::invalid_argument if the carcass no longer fits in; the belt is unchanged then.
void override_thickness(Belt& belt, double thickness);

/// Takes this share of A11 for what the carcass has left of it in compression. Throws std::invalid_argument outside (0, 1].
void set_compressive_stiffness(Belt& belt, double share);

/// Puts the bending stiffness across that a measured troughability F/L (ISO 703) means, by the width of the belt that was
/// tested [mm] and this belt's mass, in the place of D22. D12 and D66 keep their shares of sqrt(D11 D22); D11 stays. A value
/// that no belt of this construction can have is taken all the same, with a warning. Throws std::invalid_argument outside 0 <
/// F/L < 0.45; the belt is unchanged then.
void override_troughability(Belt& belt, double sag_ratio, double test_width);

}  // namespace swale
