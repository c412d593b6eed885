#pragma once

#include "solver/equilibrium/system.h"

#include <vector>

namespace swale {

struct EigenMode {
    double value = 0;       ///< [N/mm^3]
    Eigen::VectorXd shape;  ///< of the unknowns
};

/// The lowest modes of K phi = lambda M phi with the consistent area matrix M, ascending; empty if the eigensolver failed.
/// Lanczos on the shifted inverse (Spectra); the shift goes below zero until K - shift M is positive definite.
std::vector<EigenMode> lowest_modes(const System& system, const ControlPoints& points, int count);

}  // namespace swale
