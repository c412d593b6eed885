#pragma once

#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "solver/transition/cold_start.h"

namespace swale {

/// A thin belt of 1000 mm at 2 N/mm on 35 degree sets, two of them: D of 2 N m, slack in the transition.
inline TransitionCase thin_transition(double distance, double bending = 2000) {
    TransitionCase transition = benchmark::fabric_transition(distance, 0, 1);
    transition.belt.width = transition.layout.belt_width = 1000;
    Section& section = transition.belt.section;
    section.membrane = orthotropic(6000, 2000, 300, 400);
    section.bending = orthotropic(bending, bending, 0.2 * bending, 0.4 * bending);
    section.thickness = 8;
    section.underside = 4;
    section.mass = 10e-9;
    Trough& trough = transition.layout.trough;
    trough.centre_roll = trough.wing_roll = 380;
    trough.roll_diameter = 133;
    trough.sets = 2;
    transition.layout.pulley.diameter = 500;
    transition.states = {{"2 N/mm", 2000, {}}};
    return transition;
}

/// Its first state on the coarse grid, as a run solves it.
inline GridTask coarse_task(const TransitionCase& transition) {
    const TensionState& state = transition.states.front();
    const GridRequest request{*transition.layout.trough.sets, transition.belt.section.underside, transition.settings.grid,
                              transition.settings.model == Symmetry::half};
    return {
        transition, state, request.sets, belt_grid(transition.layout, request), first_scale(transition, state), "coarse grid",
        1e-6,       2};
}

}  // namespace swale
