#pragma once

#include "solver/newton/newton.h"
#include "solver/transition/belt_model.h"
#include "solver/transition_result.h"

#include <functional>
#include <optional>
#include <string>

namespace swale {

/// A state solved on one grid.
struct GridSolution {
    BeltModel model;
    ControlPoints points;
    NewtonRecord record;
    bool converged = false;
    std::string sentence;  ///< why it stopped, both numbers
};

/// What the solution of a grid needs besides its start.
struct GridTask {
    const TransitionCase& transition;
    const TensionState& state;
    int sets = 0;
    Patch patch_in_space;  ///< knots along the centre line's path in space; the belt's own are these times `scale`
    double scale = 1;
    std::string phase;                   ///< "coarse grid", "fine grid", "longer trough"
    double tolerance = 1e-8;             ///< of the relative residual
    int gauss_points = points_per_span;  ///< of the shell, a span and direction
    bool endless = false;                ///< the trough goes on behind the last set; otherwise a symmetry plane
    std::shared_ptr<const EndlessTrough> known_trough = {};  ///< of the same state, if there is one
};

/// Control points to start from on a patch over the unstretched belt.
using GridStart = std::function<ControlPoints(const Patch& patch)>;

/// Newton on one grid. With rolls the unstretched length is chosen so that under the tension the far plane is at its mid-span:
/// solved, rescaled by the miss, solved again until the miss is below 0.2 mm. A state's bulk is laid on the start, then anew on
/// what was solved, until its forces stay within 1e-3. Converged only if nothing passed through a roll.
GridSolution solve_grid(const GridTask& task, const GridStart& start, const NewtonWatcher& watcher, NewtonTimes& times);

}  // namespace swale
