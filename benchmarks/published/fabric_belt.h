#pragma once

#include "solver/transition_case.h"

#include <cmath>
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

/// Edge strain above the mean of straight strips from a flat pulley line to the trough, small angles: strip y of the wing is
/// longer by [y^2 (1 - cos a) - y h sin a] / L^2 than the centre, y from the junction; h the pulley's lift, F the wing's width.
inline double straight_strip_excess(const TransitionLayout& layout) {
    const double a = layout.trough.angle, L = layout.distance, h = layout.pulley.lift;
    const double F = layout.belt_width / 2 - layout.junction();
    const double edge = (F * F * (1 - std::cos(a)) - F * h * std::sin(a)) / (L * L);
    const double wing_sum = (F * F * F * (1 - std::cos(a)) / 3 - F * F * h * std::sin(a) / 2) / (L * L);
    return edge - 2 * wing_sum / layout.belt_width;
}

}  // namespace swale::benchmark
