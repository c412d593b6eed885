#include "solver/sensitivity.h"

#include "solver/design/state_tangent.h"
#include "solver/transition/restored_model.h"
#include "solver/transition/workers.h"

#include <algorithm>
#include <iterator>

namespace swale {

namespace {

using Rows = std::vector<Sensitivity>;

Rows derivatives(const StateTangent& tangent, const Parameter& parameter, const std::vector<Judgement>& criteria) {
    Rows rows;
    for (const Judgement& judgement : criteria)
        rows.push_back({judgement.name, judgement.state, parameter.name, parameter.unit, {}, tangent.why_none()});
    if (!tangent.why_none().empty()) return rows;
    const auto found = tangent.derivatives(parameter);
    for (std::size_t k = 0; k < rows.size(); ++k) rows[k].derivative = found[k];
    return rows;
}

// In the order of `all_criteria`; those of other shapes of the belt are left out.
std::vector<Judgement> criteria_of(const std::string& state, const TransitionResult& result) {
    std::vector<Judgement> of_state;
    std::ranges::copy_if(result.criteria, std::back_inserter(of_state), [&](const Judgement& j) { return j.state == state; });
    return of_state;
}

Rows of_state(const TransitionCase& transition, std::size_t k, const TransitionResult& result,
              const std::vector<Parameter>& parameters) {
    const StateResult& state = result.states[k];
    if (state.status != SolveStatus::converged) return {};
    const TensionState& given = transition.states[k];
    const StateTangent tangent(transition, given, result.sets, restored_model(transition, result.sets, given, state.shape),
                               state.shape.control_points);
    Rows rows;
    for (const Parameter& parameter : parameters)
        std::ranges::move(derivatives(tangent, parameter, criteria_of(state.name, result)), std::back_inserter(rows));
    return rows;
}

}  // namespace

std::vector<Sensitivity> sensitivities(const TransitionCase& transition, const TransitionResult& result,
                                       const std::vector<Parameter>& parameters) {
    Workers workers;
    std::vector<std::future<Rows>> states;
    for (std::size_t k = 0; k < result.states.size(); ++k)
        states.push_back(workers.run([&, k] { return of_state(transition, k, result, parameters); }));
    Rows all;
    for (std::future<Rows>& rows : states) std::ranges::move(rows.get(), std::back_inserter(all));
    return all;
}

}  // namespace swale
