#pragma once

#include "materials/belt.h"

namespace swale {

/// Puts a measured modulus (ISO 9856, force per width per strain, N/mm) in the place of A11. The contraction
/// nu12 = A12/A22 stays. D stays too. The test's strip contracts freely, so strictly
/// A11 = modulus + A12^2/A22; that 2 % of an EP belt is left out, A12 being a guess. Throws std::invalid_argument if the
/// modulus is not positive or the section would not be positive definite. The belt is unchanged then.
void override_modulus(Belt& belt, double modulus);

/// Puts the given working tension per width [N/mm] in the place of the catalogue's. Throws std::invalid_argument if it is not
/// positive.
void override_rated_tension(Belt& belt, double tension);

}  // namespace swale
