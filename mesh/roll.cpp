#include "mesh/roll.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace swale {

// The roll is a cylinder of radius R - e and half-length l - e, thickened by its end radius e. With a and b the distances of
// the point from that inner cylinder's barrel and end planes, the distance is hypot(a, b) - e beyond the end's edge, a - e
// over the barrel and b - e before the end face.
namespace {

// Of a point that is `a` off the barrel and `b` off the end planes.
double distance_of(double a, double b, double end_radius) {
    if (a > 0 && b > 0) return std::hypot(a, b) - end_radius;
    return std::max(a, b) - end_radius;
}

}  // namespace

double Roll::distance(const Eigen::Vector3d& point) const {
    const Eigen::Vector3d offset = point - centre;
    const double s = offset.dot(axis), rho = (offset - s * axis).norm();
    return distance_of(rho - (radius - end_radius), std::abs(s) - (half_length - end_radius), end_radius);
}

Clearance Roll::clearance(const Eigen::Vector3d& point) const {
    const Eigen::Vector3d offset = point - centre;
    const double s = offset.dot(axis);
    const Eigen::Vector3d radial = offset - s * axis;
    const double rho = radial.norm();
    const Eigen::Vector3d outward = rho > 0 ? Eigen::Vector3d(radial / rho) : up;
    const Eigen::Vector3d endward = s < 0 ? Eigen::Vector3d(-axis) : axis;
    const Eigen::Vector3d round = axis.cross(outward);
    const double a = rho - (radius - end_radius), b = std::abs(s) - (half_length - end_radius);

    const double distance = distance_of(a, b, end_radius);

    if (a > 0 && b > 0) {
        const double h = std::hypot(a, b);
        const Eigen::Vector3d normal = (a * outward + b * endward) / h, tangent = (a * endward - b * outward) / h;
        return {distance, normal, tangent * tangent.transpose() / h + a / (h * rho) * round * round.transpose()};
    }
    if (a >= b) return {distance, outward, round * round.transpose() / std::max(rho, 1e-9)};
    return {distance, endward, Eigen::Matrix3d::Zero()};
}

}  // namespace swale
