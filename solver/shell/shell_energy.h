#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "mesh/quadrature.h"
#include "solver/equilibrium/term.h"
#include "solver/shell/span_batch.h"

#include <functional>

namespace swale {

/// Stress-free curvature (k11, k22, 2 k12) of the belt at material (x, y) [1/mm].
using NaturalCurvature = std::function<Eigen::Vector3d(double x, double y)>;

/// Elastic energy of the Kirchhoff-Love shell on the patch, by Gauss points in every span.
class ShellEnergy final : public Term {
  public:
    ShellEnergy(const Patch& patch, const Section& section, NaturalCurvature natural_curvature = {}, int points_per_span = 3);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;

  private:
    template <class Visit>
    void for_each_batch(const ControlPoints& points, const Visit& visit) const;
    LaneLaw law_at(const LaneBasis& along, const LaneBasis& across) const;

    Patch patch_;
    Section section_;
    NaturalCurvature natural_curvature_;
    LineRule along_, across_;
};

}  // namespace swale
