#pragma once

#include "solver/transition/grid_solution.h"

namespace swale {

/// Potential energy of the whole belt by which `other` lies above `known`, two equilibria of one state on like grids [N mm].
///
/// Both meet the same far plane under the same tension T, but on unstretched lengths L that differ, so the bare potentials
/// (elastic energy, weight, contact, less T times the far plane's x) belong to different pieces of belt. Belt that one of them
/// doesn't need stays in the trough beyond, where a length dL of it costs dPi/dL = integral over the width of (elastic energy +
/// weight times height) - T times stretch, at the far plane. So what is compared is Pi - L dPi/dL; to first order in dL that is
/// the potential of both at the same unstretched length.
double energy_difference(const TransitionCase& transition, const TensionState& state, const GridSolution& known,
                         const GridSolution& other);

/// Where two surfaces lie farthest apart.
struct Separation {
    double distance = 0, x = 0, y = 0;  ///< [mm]; place in the unstretched belt of the first
};

/// Points at the same share of both lengths are held against each other.
Separation separation(const GridSolution& known, const GridSolution& other);

}  // namespace swale
