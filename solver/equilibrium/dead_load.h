#pragma once

#include "solver/equilibrium/term.h"

#include <utility>

namespace swale {

/// Forces that keep size and direction; energy -F . x.
class DeadLoad final : public Term {
  public:
    /// `forces` on the control points [N], 3 x points.
    explicit DeadLoad(ControlPoints forces) : forces_(std::move(forces)) {}

    double energy(const ControlPoints& points) const override { return -forces_.cwiseProduct(points).sum(); }
    void add_gradient(const ControlPoints&, ControlPoints& gradient) const override { gradient -= forces_; }
    void add_tangent(const ControlPoints&, TangentSink&) const override {}

    const ControlPoints& forces() const { return forces_; }

  private:
    ControlPoints forces_;
};

/// Area that each control point carries, the integral of its basis function [mm^2].
Eigen::VectorXd control_areas(const Patch& patch);

/// Uniform load per unstretched area [MPa], e.g. the weight of the belt.
DeadLoad area_load(const Patch& patch, const Eigen::Vector3d& per_area);

}  // namespace swale
