#pragma once

#include "solver/transition_case.h"

#include <numbers>

namespace swale::benchmark {

/// The idealised strip: 1200 mm, held flat at one end, laid on an exact 35 degree profile 2000 mm on (arc of 150 mm, flat of
/// 475 mm), drawn by 6 mm. Weightless; tests/io/data/held.example.toml as a case file.
inline TransitionCase held_transition() {
    TransitionCase transition;
    transition.belt.width = 1200;
    Section& section = transition.belt.section;
    section.membrane = orthotropic(8101.27, 2531.65, 506.33, 500);
    section.bending = orthotropic(67.511e3, 21.097e3, 4.2194e3, 4.1667e3);
    section.thickness = 10;
    section.underside = 5;
    section.foundation = 2;
    TransitionLayout& layout = transition.layout;
    layout.belt_width = 1200;
    layout.pulley.diameter = 630;
    layout.pulley.support = Support::held;
    layout.trough = {35 * std::numbers::pi / 180, 465, 465, 10, 5, 152.4, 1200, 1, Support::held, 475.0, 150};
    layout.distance = 2000;
    transition.states = {{"drawn", {}, 6.0}};
    return transition;
}

}  // namespace swale::benchmark
