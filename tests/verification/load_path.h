#pragma once

#include "tests/verification/curved_shell.h"

#include <functional>
#include <vector>

/// The path of equilibria of a shell under one load factor, through limit points of the load and of the displacement. The
/// program needs none of this: it minimises energy, and what lies between two limit points is no minimum.
namespace swale::verification {

struct PathSettings {
    double step;         ///< first and largest length of a step, root of the sum of squares of the unknowns
    int steps = 400;     ///< the test ends here if the path is not complete by then
    int iterations = 8;  ///< for one step; more halve it
};

/// From `start`, an equilibrium, until `complete` holds of a state. Steps of constant length in the unknowns with corrections
/// normal to the step so far: Riks, International Journal of Solids and Structures 15 (1979) 529; Ramm 1981.
std::vector<LoadedState> follow_path(const PointLoadedShell& shell, const LoadedState& start, const PathSettings& settings,
                                     const std::function<bool(const LoadedState&)>& complete);

/// Interior extreme values of a sequence, maxima and minima in their order, each the vertex of the parabola through three
/// neighbours.
std::vector<double> turning_values(const std::vector<double>& sequence);

}  // namespace swale::verification
