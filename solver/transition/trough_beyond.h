#pragma once

#include "solver/equilibrium/term.h"
#include "solver/transition/trough_bay.h"

#include <optional>
#include <vector>

namespace swale {

/// What a joint at mid-span feels of all bays beyond it, in the coordinates of the half bay before it.
struct JointStiffness {
    std::vector<int> components;  ///< of the last two rows of control points, 3 * place in these rows + component
    Eigen::MatrixXd matrix;       ///< [N/mm]
    Eigen::VectorXd force;        ///< gradient in the periodic state [N]
};

/// Empty if the running trough is not stable.
std::optional<JointStiffness> joint_stiffness(const TransitionCase& transition, const TroughBay& bay, Parity parity);

/// The endless trough behind the last modelled set, in place of more sets: all bays beyond the joint at mid-span, linearised
/// about the periodic belt and condensed onto the belt's last two rows of control points (position and slope there),
///   E = f . v + 1/2 v . K v,  v = what the joint does beyond the periodic state.
/// Exact while the belt lies in the sets beyond as it does in the endless trough, but for second order in v.
class TroughBeyond final : public Term {
  public:
    /// `belt`: the patch of the modelled belt that ends at a mid-span, at x = `end` in space [mm].
    TroughBeyond(const TroughBay& bay, const JointStiffness& joint, const Patch& belt, double end);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;
    std::vector<int> coupled_points() const override { return nodes_; }

  private:
    void take_stiffness(const JointStiffness& joint, double ratio);  // of the bay's last span to the belt's
    Eigen::VectorXd deviation(const ControlPoints& points) const;

    std::vector<int> nodes_;  // last row but one, last row
    Eigen::VectorXd rest_;    // their place in the periodic state, node-major
    Eigen::VectorXd force_;   // gradient there
    Eigen::MatrixXd stiffness_;
};

}  // namespace swale
