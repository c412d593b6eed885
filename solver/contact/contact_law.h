#pragma once

namespace swale {

/// The cover on a hard roll: pressure p(g) of the gap g (negative: indentation), a linear foundation with its corner rounded
/// by a parabola over |g| <= corner, so that the pressure is C1. It is a potential, p = -d(energy)/dg.
struct ContactLaw {
    double foundation = 0;  ///< pressure per indentation [N/mm^3]
    double corner = 0.02;   ///< half-width of the rounding [mm]

    double energy(double gap) const;     ///< per area [N/mm]
    double pressure(double gap) const;   ///< [MPa]
    double stiffness(double gap) const;  ///< -dp/dg [N/mm^3]
};

}  // namespace swale
