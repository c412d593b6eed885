#pragma once

#include "mesh/patch.h"
#include "solver/equilibrium/element_tangent.h"

#include <vector>

namespace swale {

/// One contribution to the potential energy of the belt: shell, contact, load. All that takes part in equilibrium has this
/// face.
class Term {
  public:
    virtual ~Term() = default;
    /// [N mm]
    virtual double energy(const ControlPoints& points) const = 0;
    /// Adds dE/dx to `gradient` (3 x points) [N].
    virtual void add_gradient(const ControlPoints& points, ControlPoints& gradient) const = 0;
    /// Adds d2E/dx2 span by span [N/mm].
    virtual void add_tangent(const ControlPoints& points, TangentSink& sink) const = 0;
    /// Control points that the term couples over more than a span, by TangentSink::add_block.
    virtual std::vector<int> coupled_points() const { return {}; }
};

}  // namespace swale
