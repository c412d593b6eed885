#include "solver/strain/run_on_line.h"

#include "mesh/quadrature.h"
#include "solver/strain/belt_probe.h"

#include <algorithm>
#include <limits>

namespace swale {

namespace {

// Traction of the pulley on the belt along and across [MPa]. With r,xy = 0 on the line, N,y = A (0, r,y . r,yy, r,x . r,yy);
// and with N,x = 0 on the pulley: t = -(N12,y, N22,y).
Eigen::Vector2d traction(const SurfaceJet& jet, const Section& section) {
    const Eigen::Vector3d strain_across(0, jet.across.dot(jet.across2), jet.along.dot(jet.across2));
    const Eigen::Vector3d force_across = section.membrane * strain_across;
    return {-force_across[2], -force_across[1]};
}

// Coefficient of friction that sticking needs, with the pressure N11 / radius of a belt under tension on a pulley.
double friction_needed(const SurfaceJet& jet, double tension, const Section& section, double radius) {
    const double drag = traction(jet, section).norm();
    return tension > 0 ? drag * radius / tension : drag > 0 ? std::numeric_limits<double>::infinity() : 0;
}

}  // namespace

RunOnLine run_on_line(const Patch& patch, const ControlPoints& points, const Section& section, double radius) {
    const BeltProbe probe(patch, points, section);
    RunOnLine line;
    line.strain = probe.at(0, patch.across.end()).strain;
    const auto place = [&](double y) { return patch.jet(points, 0, y).position.x(); };
    double first = place(patch.across.begin()), last = first, width = 0, beyond = 0;
    for (const LinePoint& across : gauss_rule(patch.across, 2).points) {
        const double y = across.position, tension = probe.at(0, y).force[0];
        const double friction = friction_needed(patch.jet(points, 0, y), tension, section, radius);
        if (friction > line.friction) {
            line.friction = friction;
            line.friction_y = y;
        }
        if (friction > assumed_friction) beyond += across.weight;
        width += across.weight;
    }
    for (const double y : patch.across.breaks()) {
        first = std::min(first, place(y));
        last = std::max(last, place(y));
    }
    line.warp = last - first;
    line.beyond_grip = beyond / width;
    return line;
}

}  // namespace swale
