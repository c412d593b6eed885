#include "solver/criteria/criteria.h"

namespace swale {

namespace {

// The tangent's lowest eigenvalue of one parity, where its mode moves most.
Judgement judge_mode(const char* name, const StateResult& state, const std::optional<double>& eigenvalue,
                     const std::optional<BeltMode>& mode) {
    Judgement judgement{name, state.name, eigenvalue, 0.0, "N/mm^3", {}, {}, true, "", {}, {}};
    judgement.source =
        "mechanics: with the tangent's lowest eigenvalue below zero the shape is unstable, the belt may wrinkle or "
        "tip; friction, which is left out, may hold it";
    judgement.at_least = true;
    if (!mode) return judgement;
    judgement.x = mode->x;
    judgement.y = mode->y;
    return judgement;
}

}  // namespace

Judgement judge_symmetric_wrinkling(const TransitionCase&, const StateResult& state) {
    return judge_mode("symmetric wrinkling", state, state.eigenvalue_symmetric, state.mode_symmetric);
}

Judgement judge_antisymmetric_wrinkling(const TransitionCase&, const StateResult& state) {
    return judge_mode("antisymmetric wrinkling", state, state.eigenvalue_antisymmetric, state.mode_antisymmetric);
}

}  // namespace swale
