#pragma once

#include "materials/section.h"
#include "solver/shell/lanes.h"

namespace swale {

/// The law of `shell_point.h` at four points at once, one a lane: that file is the plain twin, tests hold both together.
///
/// Derivatives of the surface stand in the order of their derivative along x, none first: the contraction of the tangent goes
/// by it.
enum LaneDerivative { by_y, by_yy, by_x, by_xy, by_xx };

struct LaneJet {
    LaneVector r[5];  ///< r,y  r,yy  r,x  r,xy  r,xx
};

/// Second derivative of the energy: block (p, q), p >= q in the order above; `m[i][j]` belongs to component i of derivative p.
struct LaneTangent {
    LaneMatrix block[5][5];
};

/// Section law, weight and stress-free curvature at four points.
struct LaneLaw {
    const Section& section;
    Lanes weight{};
    LaneVector natural_curvature{};
};

/// Weight times energy per area.
Lanes lane_energy(const LaneJet& jet, const LaneLaw& law);
/// Weight times its derivative.
void lane_gradient(const LaneJet& jet, const LaneLaw& law, LaneJet& gradient);
/// Weight times its second derivative; blocks with p < q are left alone.
void lane_tangent(const LaneJet& jet, const LaneLaw& law, LaneTangent& tangent);

}  // namespace swale
