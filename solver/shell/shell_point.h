#pragma once

#include "materials/section.h"

#include <Eigen/Core>

namespace swale {

/// Derivatives of the surface at a point: columns r,x  r,y  r,xx  r,yy  r,xy.
using PointJet = Eigen::Matrix<double, 3, 5>;

/// Kirchhoff-Love strains of a belt that is flat when unstretched. Voigt order, shear and twist doubled; curvature positive
/// when the edges go up: k_ij = r,ij . n with the unit normal n = r,x x r,y / |r,x x r,y| on the carrying side.
struct PointStrain {
    Eigen::Vector3d membrane;   ///< Green-Lagrange
    Eigen::Vector3d curvature;  ///< [1/mm]
};

/// Section law at a point: N of `materials/membrane_law.h`, for the linear law A e; M = D (k - k0).
struct PointForce {
    Eigen::Vector3d force;   ///< N [N/mm]
    Eigen::Vector3d moment;  ///< M [N]
};

PointStrain point_strain(const PointJet& jet);
PointForce point_force(const Section& section, const PointStrain& strain, const Eigen::Vector3d& natural_curvature);

/// Energy per area, W(e) + 1/2 (k - k0).D.(k - k0) [N/mm]; W of the linear law is 1/2 e.A.e.
double point_energy(const PointJet& jet, const Section& section, const Eigen::Vector3d& natural_curvature);

/// Derivative of point_energy with respect to the jet.
PointJet point_gradient(const PointJet& jet, const Section& section, const Eigen::Vector3d& natural_curvature);

/// Second derivative: index 3 p + i for derivative p and component i.
using PointTangent = Eigen::Matrix<double, 15, 15>;
PointTangent point_tangent(const PointJet& jet, const Section& section, const Eigen::Vector3d& natural_curvature);

}  // namespace swale
