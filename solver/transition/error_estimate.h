#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// Sets `error` of a grid's readings from their differences to the grid with spans twice as long (grid_difference), the usual
/// one halved `halvings - 1` times.
void estimate_discretisation(Readings& finest, Readings differences, int halvings);

/// Sets `far_end_error` from readings of one grid with two ends: as modelled, and nearer to the endless trough.
void estimate_far_end(Readings& result, Readings as_modelled, Readings nearer);

/// A judged reading whose error is larger than a share of its scale.
struct Excess {
    const char* name = nullptr;  ///< null: none is
    double error = 0, wanted = 0;
};

/// The worst of the readings that are judged, edge strain always: discretisation errors against `accuracy` of the reading
/// itself, tensions against that of the edge tension.
Excess discretisation_excess(const TransitionCase& transition, const TensionState& state, Readings readings);
/// The same of the far end's errors, against a quarter of the wanted accuracy.
Excess far_end_excess(const TransitionCase& transition, const TensionState& state, Readings readings);

}  // namespace swale
