#include "solver/strain/belt_probe.h"

#include <cmath>

namespace swale {

namespace {

// Mirror image at y = 0: y and the shear components change sign.
void mirror(SurfacePoint& point) {
    point.y = -point.y;
    point.position.y() = -point.position.y();
    for (Eigen::Vector3d* v :
         {&point.membrane_strain, &point.curvature, &point.top_strain, &point.bottom_strain, &point.force, &point.moment})
        v->z() = -v->z();
}

}  // namespace

BeltProbe::BeltProbe(const Patch& patch, const ControlPoints& points, const Section& section)
    : patch_(patch), points_(points), section_(section) {}

SurfacePoint BeltProbe::at(double x, double y) const {
    const bool mirrored = y < patch_.across.begin();
    const SurfaceJet jet = patch_.jet(points_, x, mirrored ? -y : y);
    PointJet columns;
    columns << jet.along, jet.across, jet.along2, jet.across2, jet.mixed;
    const PointStrain strain = point_strain(columns);
    const PointForce force = point_force(section_, strain, Eigen::Vector3d::Zero());

    SurfacePoint point;
    point.x = x;
    point.y = mirrored ? -y : y;
    point.position = jet.position;
    point.strain = jet.along.norm() - 1;  // stretch less one, as an extensometer reads it
    point.membrane_strain = strain.membrane;
    point.curvature = strain.curvature;
    // Kirchhoff: e(zeta) = e - zeta k with zeta towards the normal, the carrying side; positive curvature shortens the top.
    point.top_strain = strain.membrane - (section_.thickness - section_.underside) * strain.curvature;
    point.bottom_strain = strain.membrane + section_.underside * strain.curvature;
    point.force = force.force;
    point.moment = force.moment;
    if (mirrored) mirror(point);
    point.displacement = point.position - Eigen::Vector3d(point.x, point.y, 0);
    return point;
}

double principal_strain(const Eigen::Vector3d& strain) {
    const double mean = (strain[0] + strain[1]) / 2, radius = std::hypot((strain[0] - strain[1]) / 2, strain[2] / 2);
    return mean + radius;
}

}  // namespace swale
