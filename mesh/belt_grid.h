#pragma once

#include "mesh/patch.h"
#include "mesh/transition_layout.h"

namespace swale {

/// What the knots of a belt depend on besides the layout.
struct GridRequest {
    int sets = 2;          ///< full sets in the model
    double underside = 0;  ///< mid-surface to rolls [mm]
    double factor = 1;     ///< on every span
    bool half = true;      ///< y from 0 to W/2; otherwise the mirror image too
};

/// Where the modelled belt ends in space (unstretched if held): the held section, or midway behind the last set [mm].
double model_length(const TransitionLayout& layout, int sets);

/// Where the modelled belt begins: 0, or for a sliding pulley half a turn before its top [mm of the unstretched belt].
double model_begin(const TransitionLayout& layout, double underside);

/// Graded knots: short at pulley, rolls, junctions, edges and held lines; long elsewhere. x as in space: the caller scales it
/// to the unstretched belt.
Patch belt_grid(const TransitionLayout& layout, const GridRequest& request);

}  // namespace swale
