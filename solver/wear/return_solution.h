#pragma once

#include "solver/wear/return_model.h"

namespace swale {

/// A belt on a return roll in equilibrium, or where Newton stopped.
struct ReturnSolution {
    ControlPoints points;
    RollContact contact;
};

/// Minimises the energy from `start`, control points of the same patch.
ReturnSolution solve_return(const ReturnRun& run, const BeltMemory& memory, const Patch& patch, const ControlPoints& start);

}  // namespace swale
