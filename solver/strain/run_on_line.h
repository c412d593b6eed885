#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/transition_result.h"

namespace swale {

/// Green strain of a belt that is frozen on a pulley with one stretch along it: r,x = (stretch, 0), `across` is r,y.
Eigen::Vector3d frozen_strain(double stretch, const Eigen::Vector2d& across);

/// Reads the line at x = 0 of a belt that runs on to a pulley in steady motion (`solver/transition/run_on.h`) and sticks there
/// with one stretch. `radius`: of the belt's mid-surface on the pulley [mm]. Nothing changes along the belt there, so that
/// friction alone balances the forces' change across, and the belt's tension presses it on. What a drive asks of friction comes
/// on top.
RunOnLine run_on_line(const Patch& patch, const ControlPoints& points, const Section& section, double stretch, double radius);

}  // namespace swale
