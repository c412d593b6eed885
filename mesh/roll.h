#pragma once

#include <Eigen/Core>

namespace swale {

/// Distance of a point to a roll's surface with its derivatives (negative inside).
struct Clearance {
    double distance = 0;                                  ///< [mm]
    Eigen::Vector3d normal = Eigen::Vector3d::UnitZ();    ///< gradient of the distance, out of the roll
    Eigen::Matrix3d curvature = Eigen::Matrix3d::Zero();  ///< Hessian of the distance [1/mm]
};

/// A rigid cylinder of finite length with rounded ends. Lengths in mm.
struct Roll {
    Eigen::Vector3d centre = Eigen::Vector3d::Zero();  ///< of the axis
    Eigen::Vector3d axis = Eigen::Vector3d::UnitY();   ///< unit vector
    Eigen::Vector3d up = Eigen::Vector3d::UnitZ();     ///< unit vector from the axis to the belt
    double radius = 0;
    double half_length = 0;
    double end_radius = 0;

    Clearance clearance(const Eigen::Vector3d& point) const;
    /// The distance alone, to the same bits, at a fraction of the cost.
    double distance(const Eigen::Vector3d& point) const;
};

}  // namespace swale
