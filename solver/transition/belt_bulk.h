#pragma once

#include "solver/load/bulk_load.h"
#include "solver/transition_case.h"

#include <optional>

namespace swale {

/// Mass of the case's bulk per length [t/mm]; 0 without one.
double bulk_mass(const TransitionCase& transition);

/// x where the load begins [mm]. A head end's material runs on to the pulley; a tail end is loaded behind its transition.
double loaded_from(const TransitionLayout& layout, const Bulk& bulk);

/// The bulk of a state on the belt as it lies; empty if the state bears none. `scale`: unstretched length per length in space.
std::optional<BulkLoad> belt_bulk(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale,
                                  const ControlPoints& points);

/// The same all along, as in a bay of the running trough.
std::optional<BulkLoad> bay_bulk(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale,
                                 const ControlPoints& points);

/// How far the load that a solution was found under is from the one that its shape asks for, as a share of the load.
double bulk_misfit(const std::optional<BulkLoad>& borne, const std::optional<BulkLoad>& asked);

}  // namespace swale
