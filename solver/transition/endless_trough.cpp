#include "solver/transition/endless_trough.h"

#include <utility>

namespace swale {

double first_scale(const TransitionCase& transition, const TensionState& state) {
    if (transition.layout.trough.support == Support::held) return 1;
    const Eigen::Matrix3d& A = transition.belt.section.membrane;
    const double modulus = A(0, 0) - A(0, 1) * A(0, 1) / A(1, 1);  // free to shrink across
    return 1 / (1 + state.total.value_or(0) / (transition.belt.width * modulus));
}

EndlessTroughOutcome endless_trough(const TransitionCase& transition, const TensionState& state, const Patch& patch_in_space,
                                    int sets, int gauss_points, NewtonTimes& times) {
    const Patch half_bay = half_bay_of(transition.layout, patch_in_space, sets);
    TroughBay bay = solve_trough_bay(transition, state, half_bay, first_scale(transition, state), gauss_points, times);
    const NewtonOutcome outcome = bay.outcome;
    if (!outcome.converged) return {nullptr, outcome, "the running trough: " + outcome.sentence};
    std::optional<JointStiffness> joint = joint_stiffness(transition, bay, Parity::symmetric);
    if (!joint) return {nullptr, outcome, "the running trough is not stable"};
    return {std::make_shared<const EndlessTrough>(EndlessTrough{std::move(bay), std::move(*joint)}), outcome, ""};
}

}  // namespace swale
