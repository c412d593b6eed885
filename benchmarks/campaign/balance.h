#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale::benchmark {

/// How far the forces on the whole belt are from balance, each over tension plus weight.
struct Balance {
    double along = 0;     ///< supports + what the far end pulls
    double across = 0;    ///< supports
    double vertical = 0;  ///< supports - weight
    double largest() const;
};

Balance balance(const TransitionCase& transition, const StateResult& state);

/// Largest share of a roll's force along its own axis; a frictionless roll pushes squarely unless the belt lies on its rounded
/// end. `roll` names it.
struct AxialForce {
    double share = 0;
    std::string roll;
    bool on_rounded_end = false;  ///< the belt touches that roll's end rounding
};

AxialForce largest_axial_force(const TransitionCase& transition, const StateResult& state, const std::vector<NamedRoll>& rolls);

}  // namespace swale::benchmark
