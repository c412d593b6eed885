#pragma once

#include "solver/transition_case.h"

#include <numbers>

namespace swale::benchmark {

/// A fabric belt of 1200 mm on 35 degree sets at 25 N/mm; data chosen for comparison, not those of a belt on the market.
inline TransitionCase fabric_transition(double distance, double lift, double grid) {
    TransitionCase transition;
    transition.title = "fabric belt, 1200 mm, 35 deg, 25 N/mm";
    transition.belt.width = 1200;
    Section& section = transition.belt.section;
    section.membrane = orthotropic(8000, 2500, 500, 500);
    section.bending = orthotropic(70e3, 25e3, 5e3, 8e3);
    section.thickness = 14.5;
    section.underside = 7.25;
    section.mass = 16e-9;
    section.foundation = 2;
    TransitionLayout& layout = transition.layout;
    layout.belt_width = 1200;
    layout.pulley.diameter = 630;
    layout.pulley.lift = lift;
    layout.trough = {35 * std::numbers::pi / 180, 465, 465, 10, 5, 152, 1200, {}, Support::rolls, {}, 0};
    layout.distance = distance;
    transition.states = {{"25 N/mm", 25.0 * 1200, {}}};
    transition.settings.grid = grid;
    return transition;
}

}  // namespace swale::benchmark
