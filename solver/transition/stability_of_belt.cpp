#include "solver/transition/stability_of_belt.h"

#include "solver/stability/lowest_modes.h"

#include <numbers>

namespace swale {

namespace {

// Of the control points, held ones at rest.
ControlPoints motion_of(const System& system, const EigenMode& mode) {
    const Supports& supports = system.supports();
    return supports.expand(mode.shape) - supports.expand(Eigen::VectorXd::Zero(supports.unknowns()));
}

void find_lowest(const System& system, const ControlPoints& points, std::optional<double>& value, ControlPoints& motion) {
    const std::vector<EigenMode> modes = lowest_modes(system, points, 1);
    if (modes.empty()) return;
    value = modes.front().value;
    motion = motion_of(system, modes.front());
}

// Product of a mode of the full model with its mirror image: near 1 for symmetric modes, near -1 for antisymmetric ones.
double mirror_product(const Patch& patch, const ControlPoints& mode) {
    const int across = patch.across.size();
    double product = 0;
    for (int i = 0; i < patch.along.size(); ++i)
        for (int j = 0; j < across; ++j) {
            const Eigen::Vector3d here = mode.col(patch.index(i, j)), there = mode.col(patch.index(i, across - 1 - j));
            product += here.x() * there.x() - here.y() * there.y() + here.z() * there.z();
        }
    return product / mode.squaredNorm();
}

constexpr int fewest_modes = 6, most_modes = 48;

BeltStability lowest_by_parity(const BeltModel& model, const std::vector<EigenMode>& modes) {
    BeltStability stability;
    for (const EigenMode& mode : modes) {
        const ControlPoints motion = motion_of(model.system, mode);
        const bool even = mirror_product(model.patch, motion) > 0;
        std::optional<double>& value = even ? stability.symmetric : stability.antisymmetric;
        if (value) continue;
        value = mode.value;
        (even ? stability.symmetric_motion : stability.antisymmetric_motion) = motion;
    }
    return stability;
}

}  // namespace

BeltStability stability_of_belt(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                                const ControlPoints& points) {
    BeltStability stability;
    if (model.half) {
        const OddSystem odd = antisymmetric_system(transition, state, model);
        find_lowest(model.system, points, stability.symmetric, stability.symmetric_motion);
        find_lowest(odd.system, points, stability.antisymmetric, stability.antisymmetric_motion);
        stability.trough_tips = odd.trough_tips;
        return stability;
    }
    // The lowest few may all be of one parity: then more are looked for.
    for (int count = fewest_modes; count <= most_modes; count *= 2) {
        stability = lowest_by_parity(model, lowest_modes(model.system, points, count));
        if (stability.symmetric && stability.antisymmetric) break;
    }
    return stability;
}

bool near_instability(const TransitionCase& transition, const TensionState& state, const BeltStability& lowest) {
    constexpr double doubtful_share = 0.1;
    const double wave = std::numbers::pi / transition.layout.distance;
    const double taut = state.total.value_or(0) / transition.belt.width * wave * wave;
    const auto in_doubt = [&](const std::optional<double>& value) { return !value || *value < doubtful_share * taut; };
    return in_doubt(lowest.symmetric) || in_doubt(lowest.antisymmetric);
}

}  // namespace swale
