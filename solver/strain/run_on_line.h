#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/transition_result.h"

namespace swale {

/// Reads the line at x = 0 of a belt that runs on to a pulley in steady motion (`solver/transition/run_on.h`). `radius`: of the
/// belt's mid-surface on the pulley [mm]. From there on the belt is frozen on the pulley: nothing changes along it, so that
/// friction alone balances the forces' change across, and the belt's tension presses it on.
RunOnLine run_on_line(const Patch& patch, const ControlPoints& points, const Section& section, double radius);

}  // namespace swale
