#pragma once

#include "solver/strain/belt_probe.h"
#include "solver/transition/belt_model.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// Readings of one grid, still without error estimates; of an endless trough also those of its running bays, whose place is
/// given as just behind the model.
Readings take_readings(const TransitionCase& transition, const BeltModel& model, const ControlPoints& points);

/// The largest |k22| times the farther face's distance within a tenth of the width from a junction, in a running bay.
Reading junction_bending_strain(const TransitionCase& transition, const TroughBay& bay);

/// Mean longitudinal strain at the far end.
double far_strain(const BeltProbe& probe);

}  // namespace swale
