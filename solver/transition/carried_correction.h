#pragma once

#include "solver/transition/grid_solution.h"

namespace swale {

/// What the last state's solution had beyond its start, such as a coarser grid's spline. The next state's on the same grid has
/// nearly the same beyond its own.
class CarriedCorrection {
  public:
    /// Whether there is anything to carry.
    bool known() const { return correction_.size() > 0; }

    /// The start as it is, or with the correction where that is of the same grid.
    GridStart added_to(GridStart start) const;

    /// From a converged solution that was found from `start`, with a correction or without.
    void learn(const GridStart& start, const GridSolution& solution);

  private:
    ControlPoints correction_;
};

/// A grid solved with what is carried along, which may be nothing, and from its start alone where that does not converge.
GridSolution solve_carrying(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times,
                            CarriedCorrection* carried);

}  // namespace swale
