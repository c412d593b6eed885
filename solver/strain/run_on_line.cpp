#include "solver/strain/run_on_line.h"

#include "materials/membrane_law.h"
#include "mesh/quadrature.h"

#include <algorithm>
#include <limits>

namespace swale {

namespace {

// The belt where it is frozen on the pulley.
struct FrozenBelt {
    const Patch& patch;
    const ControlPoints& points;
    const Section& section;
    double stretch;

    Eigen::Vector3d force(double y) const {
        return membrane_force(section, frozen_strain(stretch, patch.jet(points, 0, y).across.head<2>()));
    }
};

// Coefficient of friction that a strip about y needs to stick. On the pulley N,x = 0, so that its traction is -(N12,y, N22,y);
// its pressure is N11 / radius, as of a belt under tension. Means over a strip as wide as the belt is thick: shorter waves its
// rubber evens out, and at the edge the traction itself grows as the grid is refined.
double friction_needed(const FrozenBelt& belt, double y, double radius) {
    const double strip = belt.section.thickness;
    const double begin = std::clamp(y - strip / 2, belt.patch.across.begin(), belt.patch.across.end() - strip);
    const Eigen::Vector3d change = belt.force(begin + strip) - belt.force(begin);
    const double drag = change.tail<2>().norm() / strip, tension = belt.force(y)[0];
    return tension > 0 ? drag * radius / tension : drag > 0 ? std::numeric_limits<double>::infinity() : 0;
}

// How far the last place along x is from the first.
double warp_of(const Patch& patch, const ControlPoints& points) {
    double first = std::numeric_limits<double>::infinity(), last = -first;
    for (const double y : patch.across.breaks()) {
        const double place = patch.jet(points, 0, y).position.x();
        first = std::min(first, place);
        last = std::max(last, place);
    }
    return last - first;
}

}  // namespace

Eigen::Vector3d frozen_strain(double stretch, const Eigen::Vector2d& across) {
    return {(stretch * stretch - 1) / 2, (across.squaredNorm() - 1) / 2, stretch * across.x()};
}

RunOnLine run_on_line(const Patch& patch, const ControlPoints& points, const Section& section, double stretch, double radius) {
    RunOnLine line{stretch - 1, warp_of(patch, points), 0, 0, 0};
    const FrozenBelt belt{patch, points, section, stretch};
    double width = 0, beyond = 0;
    for (const LinePoint& place : gauss_rule(patch.across, 2).points) {
        const double friction = friction_needed(belt, place.position, radius);
        if (friction > line.friction) {
            line.friction = friction;
            line.friction_y = place.position;
        }
        if (friction > assumed_friction) beyond += place.weight;
        width += place.weight;
    }
    line.beyond_grip = beyond / width;
    return line;
}

}  // namespace swale
