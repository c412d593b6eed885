#include "solver/transition/trough_length.h"

#include "solver/transition/belt_model.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

constexpr int fewest = 6, most = 32;

// W/2pi sqrt(A11/A66): self-equilibrated tensions across a strip fade by 1/e over it when A11 >> A66.
double shear_lag_length(const Belt& belt) {
    const Eigen::Matrix3d& A = belt.section.membrane;
    return belt.width / (2 * std::numbers::pi) * std::sqrt(A(0, 0) / A(2, 2));
}

// Parabola of a span that hangs with weight w per length and touches its lower support tangentially: h = w l^2 / (2 T).
double lifted_length(const TransitionCase& transition) {
    const Belt& belt = transition.belt;
    const double weight = belt.section.mass * gravity * belt.width, height = std::max(0.0, transition.layout.pulley.lift);
    double longest = 0;
    if (weight > 0)
        for (const TensionState& state : transition.states)
            longest = std::max(longest, std::sqrt(2 * state.total.value_or(0) * height / weight));
    return std::max(0.0, longest - transition.layout.distance);
}

}  // namespace

TroughLength trough_length(const TransitionCase& transition) {
    const Trough& trough = transition.layout.trough;
    if (trough.support == Support::held) return {1, "the held section ends the belt"};
    if (trough.sets) return {*trough.sets, "as the case file says"};
    const double lag = 2 * shear_lag_length(transition.belt), lifted = lifted_length(transition);
    const int wanted = 2 + static_cast<int>(std::ceil(std::max(lag, lifted) / trough.spacing));
    const int sets = std::clamp(wanted, fewest, most);
    return {sets,
            fmt::format("two shear-lag lengths are {:.1f} m, the belt is lifted for {:.1f} m behind the first set{}", lag / 1e3,
                        lifted / 1e3, wanted > most ? fmt::format(": {} sets wanted, {} is the most", wanted, most) : ""),
            wanted > most};
}

}  // namespace swale
