#include "solver/range_study.h"

#include "materials/data_sheet.h"
#include "solver/criteria/criteria.h"
#include "solver/design/range_effect.h"

#include <fmt/core.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

StudiedState studied(const StateResult& state) {
    if (state.status != SolveStatus::converged) return {state.name, {}, state.reason};
    return {state.name, static_cast<const Readings&>(state), state.reason};
}

StudiedRun studied(const std::vector<StateResult>& states, const std::vector<Judgement>& criteria) {
    StudiedRun run;
    for (const StateResult& state : states) run.states.push_back(studied(state));
    for (const Judgement& judgement : criteria)
        if (judgement.passed == false && !judgement.advisory)
            run.exceeded.push_back(fmt::format("{} in \"{}\"", judgement.name, judgement.state));
    return run;
}

StudiedRun solved(const TransitionCase& transition, const ProgressListener& listener) {
    const TransitionResult result = solve_transition(transition, listener);
    return studied(result.states, result.criteria);
}

// A number that no solution depends on.
StudiedRun judged_at_end(TransitionCase transition, const std::string& name, End end, const TransitionResult& as_given) {
    transition.belt = at_end(transition.belt, name, end);
    return studied(as_given.states, judge(transition, as_given.states));
}

StudiedRun without_solution(const TransitionCase& transition, const std::string& why) {
    StudiedRun run;
    for (const TensionState& state : transition.states) run.states.push_back({state.name, {}, why});
    return run;
}

StudiedRun solved_at_end(TransitionCase transition, const std::string& name, End end, const ProgressListener& listener) {
    const auto named = [&](ProgressEvent event) {
        event.state = fmt::format("{} {} \u00B7 {}", name, end == End::low ? "low" : "high", event.state);
        listener(event);
    };
    try {
        transition.belt = at_end(transition.belt, name, end);
        return solved(transition, listener ? ProgressListener(named) : ProgressListener());
    } catch (const std::invalid_argument& error) {
        return without_solution(transition, error.what());
    }
}

}  // namespace

RangeStudy study_ranges(const TransitionCase& given, const ProgressListener& listener) {
    TransitionCase transition = given;
    transition.settings.tension_path = 0;  // of no use here
    const TransitionResult result = solve_transition(transition, listener);
    RangeStudy study{studied(result.states, result.criteria), {}};
    const auto at = [&](const std::string& name, End end) {
        return name == "rated_tension" ? judged_at_end(transition, name, end, result)
                                       : solved_at_end(transition, name, end, listener);
    };
    for (const std::string& name : uncertain_data(transition.belt)) {
        StudiedDatum datum{entry_of(transition.belt.data, name), at(name, End::low), at(name, End::high), {}};
        datum.effects = range_effects(study.as_given, datum.low, datum.high);
        study.data.push_back(std::move(datum));
    }
    std::ranges::stable_sort(study.data, std::ranges::greater(), &StudiedDatum::largest_swing);
    return study;
}

}  // namespace swale
