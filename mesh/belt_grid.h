#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "mesh/transition_layout.h"

#include <limits>

namespace swale {

/// Lengths over which a belt's shape and strain change, and so the spans that can follow them [mm]. Infinite: no demand.
struct BoundaryLayers {
    /// sqrt(D11/N) at the tension N of 0.5 % strain: a belt under tension bends over a roll within it. Longer spans leave a
    /// tension that swings from span to span: for D11 = 7 N m the edge strain was 5 % too high on spans of 2.4 lengths.
    double along = std::numeric_limits<double>::infinity();
    /// (64 D22/k)^(1/4): longer spans bend less easily between knots than the cover gives way, k its stiffness; the pressure
    /// at a roll's end then depends on the grid (13 for 9.5 N/mm on spans of 1.3 lengths).
    double across = std::numeric_limits<double>::infinity();
    /// 100 mm sqrt(A66/A11): how far from the edge a pull along the belt fades that changes over 100 mm of it, as at a roll or
    /// pulley (shear lag: A11 u,xx + A66 u,yy = 0). Cords are stiff in soft rubber: some 8 mm, on spans of 30 mm the edge
    /// strain was up to 10 % too high.
    double shear = std::numeric_limits<double>::infinity();
};

BoundaryLayers boundary_layers(const Section& section);

/// What the knots of a belt depend on besides the layout.
struct GridRequest {
    int sets = 2;          ///< full sets in the model
    double underside = 0;  ///< mid-surface to rolls [mm]
    double factor = 1;     ///< on every span
    bool half = true;      ///< y from 0 to W/2; otherwise the mirror image too
    BoundaryLayers layers = {};
    /// On the spans behind the pulley and at the edges, where the line that holds the belt meets the free edge in a singular
    /// corner. The edge's peak is read near it: a quarter took its error from 1.6 to 0.35 % for 42 % more unknowns.
    double corner = 1;
};

/// Where the modelled belt ends in space (unstretched if held): the held section, or midway behind the last set [mm].
double model_length(const TransitionLayout& layout, int sets);

/// Where it ends along the belt's centre line: behind a raised or lowered pulley farther (IdlerSet::path) [mm].
double path_length(const TransitionLayout& layout, int sets);

/// Where the modelled belt begins: 0, or for a sliding pulley half a turn before its top [mm of the unstretched belt].
double model_begin(const TransitionLayout& layout, double underside);

/// Graded knots: short at pulley, rolls, junctions, edges and held lines; long elsewhere. Where rolls carry it, a soft belt
/// gets shorter spans at the junctions, the edges, the stations and the first full set. Lengths along are those of the centre
/// line's path in space: the caller scales them to the unstretched belt.
Patch belt_grid(const TransitionLayout& layout, const GridRequest& request);

}  // namespace swale
