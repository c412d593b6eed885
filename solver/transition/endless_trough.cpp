#include "solver/transition/endless_trough.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

double first_scale(const TransitionCase& transition, const TensionState& state) {
    if (transition.layout.trough.support == Support::held) return 1;
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);  // free to shrink across
    return 1 / (1 + state.total.value_or(0) / (transition.belt.width * modulus));
}

namespace {

bool same_breaks(const CubicBasis& one, const CubicBasis& other) {
    return std::ranges::equal(one.breaks(), other.breaks(), [](double a, double b) { return std::abs(a - b) < 1e-6; });
}

bool same_knots(const Patch& half_bay, const TroughBay& known) {
    return same_breaks(half_bay.along.scaled(known.scale), known.patch.along) &&
           same_breaks(half_bay.across, known.patch.across);
}

}  // namespace

EndlessTroughOutcome endless_trough(const TransitionCase& transition, const TensionState& state, const Patch& patch_in_space,
                                    int sets, int gauss_points, const std::shared_ptr<const EndlessTrough>& known,
                                    NewtonTimes& times) {
    const Patch half_bay = half_bay_of(transition.layout, patch_in_space, sets);
    if (known && same_knots(half_bay, known->bay)) return {known, known->bay.outcome, ""};
    TroughBay bay = known ? solve_trough_bay(transition, half_bay, known->bay, times)
                          : solve_trough_bay(transition, state, half_bay, first_scale(transition, state), gauss_points, times);
    const NewtonOutcome outcome = bay.outcome;
    if (!outcome.converged) return {nullptr, outcome, "the running trough: " + outcome.sentence};
    std::optional<JointStiffness> joint = joint_stiffness(transition, bay, Parity::symmetric);
    if (!joint) return {nullptr, outcome, "the running trough is not stable"};
    return {std::make_shared<const EndlessTrough>(EndlessTrough{std::move(bay), std::move(*joint)}), outcome, ""};
}

}  // namespace swale
