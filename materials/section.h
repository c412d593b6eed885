#pragma once

#include <Eigen/Core>

#include <string>

namespace swale {

/// What the carcass bears along the belt in compression; the law is in `membrane_law.h`.
struct Compression {
    double share = 1;  ///< of A11 that is left in compression, in (0, 1]; 1: the linear law
    double blend = 1;  ///< force of the linear law over which the rest is lost, from 0 on [N/mm]
    bool linear() const { return share == 1; }
};

/// Mechanical section of the belt, all per unit of unstretched width or area. Units: mm, N, t (tonne), s.
///
/// Voigt order (along the belt, across, shear) with engineering shear and twist: e12 and k12 are doubled, so A66 and D66
/// are those of laminate theory. N = A e [N/mm], M = D (k - k0) [N]. A and D are independent: the plies of a belt slide in
/// rubber, so D is far below A t^2/12.
struct Section {
    Eigen::Matrix3d membrane = Eigen::Matrix3d::Zero();  ///< A [N/mm]
    Eigen::Matrix3d bending = Eigen::Matrix3d::Zero();   ///< D [N mm]
    double thickness = 0;                                ///< covers and carcass [mm]
    double underside = 0;                                ///< carcass mid-surface to the face on the rolls [mm]
    double mass = 0;                                     ///< per area [t/mm^2]; 1 kg/m^2 = 1e-9 t/mm^2
    double foundation = 0;                               ///< pressure per indentation of the bottom cover [N/mm^3]
    Compression compression;                             ///< N = A e bends off where the carcass is compressed

    /// Distance from the mid-surface to the farther of both faces [mm].
    double farther_face() const;
};

/// Orthotropic 3x3 law from its four constants.
Eigen::Matrix3d orthotropic(double along, double across, double coupling, double shear);

/// Empty if the matrix is positive definite; otherwise a sentence that names `name` and the condition broken with its numbers.
std::string why_not_positive_definite(const Eigen::Matrix3d& law, const std::string& name);

}  // namespace swale
