#pragma once

#include "mesh/patch.h"
#include "solver/transition/belt_supports.h"
#include "solver/transition_result.h"

namespace swale {

/// A mode at the points of a belt's surface. `motion` is that of the control points on `patch`, which may be another grid of
/// the same belt, its unstretched length a trifle different; where it is of half the belt `parity` gives the other half. Its
/// sign: up, where it moves most.
BeltMode sample_mode(const Patch& patch, const ControlPoints& motion, Parity parity, const BeltSurface& surface);

}  // namespace swale
