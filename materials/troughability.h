#pragma once

namespace swale {

/// The heavy elastica hung at both ends by vertical forces, free to come together: a strip of length L, bending stiffness D per
/// width and weight q per area sags by F. In units of L and D with G = q L^3 / D:
///   theta''(x) = -G x cos theta,  theta(0) = 0,  theta'(1/2) = 0,  F/L = integral of sin theta from 0 to 1/2,
/// x along the strip from its middle. Small sag: F/L = 5 G/384, which at F/L = 0.20 is 26 % off.
double sag_ratio(double load);

/// The G at which the strip sags by F/L. Throws std::invalid_argument outside 0 < F/L < 0.45: no belt hangs deeper in the test.
double load_of_sag_ratio(double sag_ratio);

/// Bending stiffness across the belt [N mm] of the troughability F/L that ISO 703 measures: a strip of the full belt width [mm]
/// hung at its cut ends, `mass` per area [t/mm^2].
double stiffness_of_troughability(double sag_ratio, double width, double mass);

/// Troughability of a belt with that stiffness.
double troughability_of_stiffness(double stiffness, double width, double mass);

}  // namespace swale
