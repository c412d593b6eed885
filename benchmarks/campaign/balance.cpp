#include "benchmarks/campaign/balance.h"

#include "mesh/patch.h"
#include "solver/transition/belt_model.h"

#include <algorithm>
#include <cmath>

namespace swale::benchmark {

namespace {

constexpr double touching = 0.03;  // gap below which the contact law presses, and a little more [mm]

CubicBasis basis_of(const std::vector<double>& knots) {
    return CubicBasis({knots.begin() + 3, knots.end() - 3});
}

Patch patch_of(const BeltShape& shape) {
    return {basis_of(shape.knots_along), basis_of(shape.knots_across)};
}

// Weight of the whole belt [N]; its mass is per unstretched area.
double weight(const TransitionCase& transition, const StateResult& state) {
    const double length = state.shape.knots_along.back() - state.shape.knots_along.front();
    return transition.belt.section.mass * gravity * transition.belt.width * length;
}

// Looks closely at the belt around a roll for a place that touches the roll's rounded ends.
bool touches_rounded_end(const StateResult& state, const Roll& roll, double underside) {
    const Patch patch = patch_of(state.shape);
    const double reach = roll.radius + 100;
    for (double x = std::max(patch.along.begin(), roll.centre.x() - reach);
         x < std::min(patch.along.end(), roll.centre.x() + reach); x += 0.5)
        for (double y = patch.across.begin(); y <= patch.across.end(); y += 0.5) {
            const Eigen::Vector3d position = patch.jet(state.shape.control_points, x, y).position;
            const double along_axis = std::abs((position - roll.centre).dot(roll.axis));
            if (along_axis < roll.half_length - roll.end_radius) continue;
            if (roll.clearance(position).distance - underside < touching) return true;
        }
    return false;
}

}  // namespace

double Balance::largest() const {
    return std::max({std::abs(along), std::abs(across), std::abs(vertical)});
}

Balance balance(const TransitionCase& transition, const StateResult& state) {
    Eigen::Vector3d sum = state.far_end_force - Eigen::Vector3d(0, 0, weight(transition, state));
    const double scale = std::abs(state.tension) + weight(transition, state);
    for (const SupportForce& support : state.supports) sum += support.force;
    sum /= scale;
    return {sum.x(), sum.y(), sum.z()};
}

AxialForce largest_axial_force(const TransitionCase& transition, const StateResult& state,
                               const std::vector<NamedRoll>& rolls) {
    AxialForce largest;
    const NamedRoll* worst = nullptr;
    for (const SupportForce& support : state.supports)
        for (const NamedRoll& named : rolls) {
            if (named.name != support.name || named.name == "pulley" || support.force.norm() == 0) continue;
            const double share = std::abs(support.force.dot(named.roll.axis)) / support.force.norm();
            if (share <= largest.share) continue;
            largest = {share, named.name, false};
            worst = &named;
        }
    if (worst && largest.share > 1e-9)
        largest.on_rounded_end = touches_rounded_end(state, worst->roll, transition.belt.section.underside);
    return largest;
}

}  // namespace swale::benchmark
