#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/shell/shell_point.h"
#include "solver/transition_result.h"

namespace swale {

/// Reads strains and forces of the solved belt at any material point, also on the side that is not modelled.
class BeltProbe {
  public:
    BeltProbe(const Patch& patch, const ControlPoints& points, const Section& section);

    /// Everything but the contact pressure, at material (x, y); y of either sign.
    SurfacePoint at(double x, double y) const;

    double begin() const { return patch_.along.begin(); }
    double end() const { return patch_.along.end(); }
    double edge() const { return patch_.across.end(); }
    const Patch& patch() const { return patch_; }
    const ControlPoints& points() const { return points_; }

  private:
    const Patch& patch_;
    const ControlPoints& points_;
    const Section& section_;
};

/// Largest principal strain of a Voigt strain with doubled shear.
double principal_strain(const Eigen::Vector3d& strain);

}  // namespace swale
