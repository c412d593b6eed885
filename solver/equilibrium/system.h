#pragma once

#include "solver/equilibrium/band_matrix.h"
#include "solver/equilibrium/supports.h"
#include "solver/equilibrium/term.h"

#include <memory>
#include <vector>

namespace swale {

/// Wall time spent in the parts of a system [s].
struct SystemTimes {
    double energy = 0, gradient = 0, tangent = 0;
};

/// Terms on a patch under supports: potential energy, residual and tangent of the unknowns.
class System {
  public:
    System(const Patch& patch, Supports supports);

    void add(std::shared_ptr<const Term> term) { terms_.push_back(std::move(term)); }

    const Patch& patch() const { return patch_; }
    const Supports& supports() const { return supports_; }
    int unknowns() const { return supports_.unknowns(); }

    double energy(const Eigen::VectorXd& q) const;
    /// Sum of the terms' gradients on all control points [N]; at fixed ones this is the reaction.
    ControlPoints full_gradient(const ControlPoints& points) const;
    /// Tangent of the unknowns where the control points are [N/mm].
    BandMatrix tangent(const ControlPoints& points) const;
    /// Area of each unknown [mm^2], lumped: the weight of a diagonal shift.
    Eigen::VectorXd areas() const;
    /// Consistent area matrix, the integral of N_a N_b [mm^2].
    BandMatrix area_matrix() const;

  private:
    BandMatrix empty_band() const;

    Patch patch_;
    Supports supports_;
    std::vector<std::shared_ptr<const Term>> terms_;
    int half_bandwidth_ = 0;
};

}  // namespace swale
