#include "solver/design/levers.h"

#include "solver/design/state_tangent.h"
#include "solver/design/trial.h"
#include "solver/transition/restored_model.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

std::vector<Parameter> levers_to_pull(const TransitionCase& transition, const TensionState& state) {
    std::vector<Parameter> parameters = geometry_parameters(transition);
    if (state.total) parameters.push_back(belt_parameters(transition).front());
    return parameters;
}

// Farther than this a first-order change says nothing: a tenth of the distance, ten degrees, half the tension.
double reach(const Parameter& parameter, const TransitionCase& transition, const TensionState& state) {
    if (parameter.unit == "N") return 0.5 * parameter.value(transition, state);
    return parameter.unit == "rad" ? std::numbers::pi / 18 : 0.1 * transition.layout.distance;
}

std::optional<double> needed_change(double share, double slope, double reach) {
    if (share >= 0 || slope == 0 || std::abs(share / slope) > reach) return {};
    return -share / slope;
}

}  // namespace

std::vector<Lever> levers_of(const TransitionCase& transition, const TransitionResult& result) {
    return levers_of(transition, result, levers_to_pull);
}

std::vector<Lever> levers_of(const TransitionCase& transition, const TransitionResult& result, const ParametersOf& parameters) {
    const Trial trial = as_trial(result);
    if (!trial.solved() || !trial.least()) return {};
    const Headroom least = *trial.least();
    const auto state = std::ranges::find(result.states, least.state, &StateResult::name);
    if (state == result.states.end()) return {};  // another shape of a slack belt
    const TensionState& given = transition.states[state - result.states.begin()];
    const StateTangent tangent(transition, given, result.sets, restored_model(transition, result.sets, given, state->shape),
                               state->shape.control_points);
    if (!tangent.why_none().empty()) return {};
    const auto first = std::ranges::find(result.criteria, least.state, &Judgement::state);
    const auto judged =
        std::find_if(first, result.criteria.end(), [&](const Judgement& j) { return j.name == least.criterion; });
    std::vector<Lever> levers;
    for (const Parameter& parameter : parameters(transition, given)) {
        const double derivative = tangent.derivatives(parameter)[judged - first].value_or(0);
        Lever lever{parameter.name, parameter.unit, headroom_slope(*judged, state->edge_tension_max.value, derivative), {}, {}};
        lever.needed = needed_change(least.share, lever.slope, reach(parameter, transition, given));
        if (!levers.empty() && levers.front().slope != 0) lever.distance = -lever.slope / levers.front().slope;
        levers.push_back(lever);
    }
    return levers;
}

}  // namespace swale
