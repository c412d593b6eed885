#pragma once

#include "mesh/quadrature.h"
#include "solver/equilibrium/term.h"

namespace swale::verification {

/// A moment about -y that turns with the last section of a strip: energy -M times the mean angle of its tangent against x, in
/// the plane y = const. The angle is taken within half a turn of `about`, so that it runs on over a full circle.
class EndMoment final : public Term {
  public:
    /// `moment` of the whole width [N mm], positive when it lifts the end.
    EndMoment(const Patch& patch, double moment, double about);

    double energy(const ControlPoints& points) const override;
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override;
    void add_tangent(const ControlPoints& points, TangentSink& sink) const override;

  private:
    struct Tangent;
    template <class Visit>
    void for_each_point(const ControlPoints& points, const Visit& visit) const;

    Patch patch_;
    double per_width_, about_;
    LineRule across_;
    BasisValues end_;
};

}  // namespace swale::verification
