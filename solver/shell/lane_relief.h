#pragma once

#include "solver/shell/lane_point.h"

namespace swale {

/// What a carcass that is softer in compression adds to the linear law at four points, weight times R(n)/A11 of
/// `materials/membrane_law.h`: its energy, derivative and second derivative. Sums of their own, so that the linear law is left
/// to the last bit.
Lanes relief_energy(const LaneJet& jet, const LaneLaw& law);
void add_relief_gradient(const LaneJet& jet, const LaneLaw& law, LaneJet& gradient);
void add_relief_tangent(const LaneJet& jet, const LaneLaw& law, LaneTangent& tangent);

}  // namespace swale
