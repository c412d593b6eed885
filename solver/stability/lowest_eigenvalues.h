#pragma once

#include "solver/equilibrium/system.h"

#include <optional>
#include <vector>

namespace swale {

/// The lowest eigenvalues of K phi = lambda M phi with the consistent area matrix M [N/mm^3], ascending; empty if the
/// eigensolver failed. Lanczos on the shifted inverse (Spectra); the shift goes below zero until K - shift M is positive definite.
std::vector<double> lowest_eigenvalues(const System& system, const ControlPoints& points, int count = 1);

}  // namespace swale
