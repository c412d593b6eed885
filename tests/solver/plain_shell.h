#pragma once

#include "mesh/quadrature.h"
#include "solver/equilibrium/term.h"
#include "solver/shell/shell_energy.h"

namespace swale {

/// The plain twin of ShellEnergy: point by point, with the law of shell_point.h and whole matrices.
class PlainShell final : public Term {
  public:
    PlainShell(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, int points_per_span);
    /// With any rule, of another number of points in each span too.
    PlainShell(const Patch& patch, const Section& section, NaturalCurvature natural_curvature, LineRule along, LineRule across);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;

  private:
    template <class Visit>
    void for_each_point(const ControlPoints& points, const Visit& visit) const;

    Patch patch_;
    Section section_;
    NaturalCurvature natural_curvature_;
    LineRule along_, across_;
};

}  // namespace swale
