#pragma once

#include "materials/section.h"

namespace swale {

/// The membrane law of a carcass that bears less in compression than in tension:
///
///   W(e) = 1/2 e.A.e + R(n) / A11,   n = A11 e11 + A12 e22 + A16 e12,   R'' = (s - 1) min(-n / b, 1) for n < 0, else 0
///
/// n is N11 of the linear law, so that the force along the carcass decides, contraction included; s is the share of A11 left
/// and b the force over which it is lost, so that Newton sees no jump. Hence N = A e + R' a / A11 and dN/de = A + R'' a a^T /
/// A11 with a the first row of A. A change of rank one along the normal of the plane n = 0 is the only one for which a law of
/// two moduli has a continuous force (Curnier, He, Zysset, Conewise linear elastic materials, J. Elasticity 37 (1995) 1; bodies
/// of different moduli: Ambartsumyan; s towards 0 is the relaxed energy of tension fields, Pipkin, IMA J. Appl. Math. 36 (1986)
/// 85; all from memory, sure).
///
/// Convex for every s > 0: dN/de = (A - a a^T / A11) + (1 + R'') a a^T / A11 with 1 + R'' >= s. The first part is not negative
/// and vanishes on e11 alone (Schur complement), where the second is (1 + R'') A11 > 0. Under tension, and everywhere for
/// s = 1, the law is the linear one. Bending is not touched: plies slide in rubber, D has little of A in it.
double membrane_energy(const Section& section, const Eigen::Vector3d& strain);            ///< W [N/mm]
Eigen::Vector3d membrane_force(const Section& section, const Eigen::Vector3d& strain);    ///< N [N/mm]
Eigen::Matrix3d membrane_tangent(const Section& section, const Eigen::Vector3d& strain);  ///< dN/de [N/mm]

/// R with its derivatives.
template <class Real>
struct CompressionRelief {
    Real energy{}, slope{}, curvature{};
};

/// `Real`: a number, or several that are treated at once.
template <class Real>
CompressionRelief<Real> compression_relief(const Compression& compression, const Real& n) {
    const double lost = 1 - compression.share, b = compression.blend;
    // n in two parts: within the blend, and what lies below it.
    const Real below = n + b < 0 ? n + b : Real{}, negative = n < 0 ? n : Real{}, within = negative - below;
    return {lost * (within * within * within / (6 * b) + (b * below - below * below) / 2),
            lost * (within * within / (2 * b) - below), lost / b * within};
}

}  // namespace swale
