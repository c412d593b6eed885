#include "tests/verification/fabric_belt.h"

#include <numbers>

namespace swale::verification {

TransitionCase fabric_transition() {
    TransitionCase transition;
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
    layout.trough = {35 * std::numbers::pi / 180, 465, 465, 10, 5, 152, 1200, 2, Support::rolls, {}, 0};
    layout.distance = 2400;
    transition.states = {{"25 N/mm", 25.0 * 1200, {}}};
    transition.settings.grid = 2;
    return transition;
}

double weight_of(const TransitionCase& transition, const BeltShape& shape) {
    constexpr double gravity = 9806.65;  // standard gravity [mm/s^2], CGPM 1901
    return transition.belt.section.mass * gravity * transition.belt.width *
           (shape.knots_along.back() - shape.knots_along.front());
}

}  // namespace swale::verification
