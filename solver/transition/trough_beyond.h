#pragma once

#include "solver/equilibrium/term.h"
#include "solver/transition/trough_bay.h"

#include <vector>

namespace swale {

/// The endless trough behind the last modelled set, in place of more sets: all bays beyond the joint at mid-span, linearised
/// about the periodic belt and condensed onto the belt's last two rows of control points (position and slope there),
///   E = f . v + 1/2 v . K v,  v = what the joint does beyond the periodic state.
/// Exact while the belt lies in the sets beyond as it does in the endless trough, but for second order in v.
class TroughBeyond final : public Term {
  public:
    /// `belt`: the patch of the modelled belt that ends at a mid-span, at x = `end` in space [mm].
    TroughBeyond(const TransitionCase& transition, const TroughBay& bay, const Patch& belt, double end, Parity parity);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;
    std::vector<int> coupled_points() const override { return nodes_; }

  private:
    Eigen::VectorXd deviation(const ControlPoints& points) const;

    std::vector<int> nodes_;  // last row but one, last row
    std::vector<int> free_;   // their components that are unknowns
    Eigen::VectorXd rest_;    // their place in the periodic state, node-major
    Eigen::VectorXd force_;   // gradient there
    Eigen::MatrixXd stiffness_;
};

}  // namespace swale
