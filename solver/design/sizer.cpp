#include "solver/design/sizer.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace swale {

namespace {

// A state whose headroom is predicted above this is not looked at before the whole solution.
constexpr double far_from_limits = 0.1;
// Of the root that the coarse grid shows, as a share: its error is of that size.
constexpr double near_enough = 0.02;
constexpr int most_proofs = 6;
constexpr int most_trials_of_a_run = 12;

SizingStep step_of(const TransitionCase& arrangement, const Trial& trial, TrialGrid grid, bool whole = false) {
    return {arrangement.layout, grid == TrialGrid::coarse, whole, trial.passes(), trial.headroom(), trial.binding()};
}

Arrangement arrangement_of(const TransitionCase& transition, const SizingStep& step) {
    return {name_of(transition.layout), transition, step.passed, step.headroom, step.binding};
}

// The whole solution's headrooms with the slopes that a trial of the same arrangement found.
Trial with_slopes_of(Trial whole, const Trial& trial) {
    for (Headroom& headroom : whole.headrooms) {
        const auto same = std::ranges::find(trial.headrooms, headroom.name(), &Headroom::name);
        if (same != trial.headrooms.end()) headroom.slopes = same->slopes;
    }
    return whole;
}

}  // namespace

Sizer::Sizer(const TransitionCase& given, const SizingBounds& bounds, const ProgressListener& listener)
    : given_(given), bounds_(bounds), trials_(given, listener) {}

Trial Sizer::tried(const TransitionCase& arrangement, const std::vector<std::size_t>& states,
                   const std::vector<Parameter>& slopes_by, TrialGrid grid) {
    const std::string impossible = why_impossible(arrangement.layout);
    const Trial trial = impossible.empty() ? trials_.of(arrangement, states, slopes_by, grid) : Trial{{}, impossible};
    steps_.push_back(step_of(arrangement, trial, grid));
    return trial;
}

// All states until their slopes are known; then those that may come near a limit; to see a failure, the one nearest to it.
std::vector<std::size_t> Sizer::states_for(const DistanceGuess& guess) const {
    if (last_by_state_.size() < given_.states.size()) return trials_.all_states();
    std::vector<std::size_t> near;
    std::size_t nearest = 0;
    double least_of_all = std::numeric_limits<double>::infinity();
    for (const auto& [state, last] : last_by_state_) {
        double least = std::numeric_limits<double>::infinity();
        for (const Headroom& headroom : last.trial.headrooms)
            least = std::min(least, predicted_share(headroom, last.distance, guess.distance));
        if (least < far_from_limits) near.push_back(state);
        if (least < least_of_all) nearest = state;
        least_of_all = std::min(least_of_all, least);
    }
    return guess.to_fail || near.empty() ? std::vector{nearest} : near;
}

Trial Sizer::tried_at(const TransitionCase& arrangement, const DistanceGuess& guess, TrialGrid grid) {
    const TransitionCase arranged = at_distance(arrangement, guess.distance);
    const std::vector<Parameter> by =
        guess.to_fail ? std::vector<Parameter>{} : std::vector{distance_variable(bounds_, arranged).parameter};
    const std::vector<std::size_t> states = states_for(guess);
    Trial trial = tried(arranged, states, by, grid);
    if (!trial.solved() || guess.to_fail) return trial;
    for (const std::size_t k : states) {
        Trial of_state;
        std::ranges::copy_if(trial.headrooms, std::back_inserter(of_state.headrooms),
                             [&](const Headroom& h) { return h.state == given_.states[k].name; });
        last_by_state_.insert_or_assign(k, DistanceTrial{arranged.layout.distance, std::move(of_state)});
    }
    return trial;
}

// On the coarse grid until the answer is near.
void Sizer::go_on(const TransitionCase& arrangement, DistanceSearch& search, TrialGrid grid) {
    constexpr int most_steps = 40;
    for (int k = 0; k < most_steps; ++k) {
        const auto guess = search.next();
        if (!guess || (guess->to_fail && grid == TrialGrid::coarse)) return;
        search.take({guess->distance, tried_at(arrangement, *guess, grid)});
    }
}

// Where the coarse grid has the shortest that passes, or the longest that fails; the given distance comes first.
double Sizer::likely_shortest(const TransitionCase& arrangement) {
    DistanceSearch search(bounds_.shortest, bounds_.longest, near_enough);
    const double given = std::ceil(std::clamp(arrangement.layout.distance, bounds_.shortest, bounds_.longest));
    search.take({given, tried_at(arrangement, {given, false}, TrialGrid::coarse)});
    go_on(arrangement, search, TrialGrid::coarse);
    const DistanceTrial& found = search.passing() ? *search.passing() : *search.failing();
    const double root = predicted_root(found).value_or(found.distance);
    return std::ceil(std::clamp(root, bounds_.shortest, found.distance));
}

DistanceSearch Sizer::search_from(const TransitionCase& arrangement) {
    last_by_state_.clear();
    DistanceSearch search(bounds_.shortest, bounds_.longest, bounds_.relative);
    const double start = likely_shortest(arrangement);
    search.take({start, tried_at(arrangement, {start, false}, TrialGrid::fine)});
    go_on(arrangement, search);
    return search;
}

Arrangement Sizer::as_found(const TransitionCase& arrangement, const DistanceSearch& search) const {
    const auto& found = search.passing() ? search.passing() : search.failing();
    const TransitionCase arranged = at_distance(arrangement, found->distance);
    return arrangement_of(arranged, step_of(arranged, found->trial, TrialGrid::fine));
}

Arrangement Sizer::nearly_shortest(const TransitionCase& arrangement) {
    return as_found(arrangement, search_from(arrangement));
}

Arrangement Sizer::shortest(const TransitionCase& arrangement) {
    DistanceSearch search = search_from(arrangement);
    Arrangement proof = proved(as_found(arrangement, search).transition);
    for (int k = 1; k < most_proofs && search.passing() && !proof.passes; ++k) {
        const double distance = search.passing()->distance;
        search.take({distance, with_slopes_of(as_trial(result_), search.passing()->trial)});
        go_on(arrangement, search);
        proof = proved(as_found(arrangement, search).transition);
    }
    return proof;
}

Arrangement Sizer::tried_as_it_is(const TransitionCase& arrangement) {
    tried(arrangement, trials_.all_states(), {});
    return arrangement_of(arrangement, steps_.back());
}

Arrangement Sizer::proved(const TransitionCase& arrangement) {
    layout_of_result_ = arrangement.layout;
    result_ = trials_.whole(arrangement);
    steps_.push_back(step_of(arrangement, as_trial(result_), TrialGrid::fine, true));
    return arrangement_of(arrangement, steps_.back());
}

const TransitionResult& Sizer::result_of(const TransitionCase& arrangement) {
    if (trials_.whole_solutions() == 0 || name_of(arrangement.layout) != name_of(layout_of_result_) ||
        arrangement.layout.distance != layout_of_result_.distance)
        proved(arrangement);
    return result_;
}

namespace {

std::vector<Parameter> parameters_of(const std::vector<Variable>& variables) {
    std::vector<Parameter> parameters;
    for (const Variable& variable : variables) parameters.push_back(variable.parameter);
    return parameters;
}

}  // namespace

Arrangement Sizer::most_headroom(const TransitionCase& arrangement, const std::vector<Variable>& variables,
                                 const std::vector<std::vector<double>>& starts) {
    const ValuesTrial trial = [&](const std::vector<double>& values) {
        return tried(with_values(arrangement, variables, values), trials_.all_states(), parameters_of(variables));
    };
    const Optimum best = swale::most_headroom(variables, starts, trial, most_trials_of_a_run);
    const TransitionCase built = as_built(with_values(arrangement, variables, best.values));
    return arrangement_of(built, step_of(built, best.trial, TrialGrid::fine));
}

TransitionCase Sizer::shortest_with(const TransitionCase& arrangement, const std::vector<Variable>& variables) {
    const ValuesTrial trial = [&](const std::vector<double>& values) {
        return tried(with_values(arrangement, variables, values), trials_.all_states(), parameters_of(variables));
    };
    const Optimum best = least_first_value(variables, values_of(arrangement, variables), 1e-3, trial, most_trials_of_a_run);
    return as_built(with_values(arrangement, variables, best.values));
}

}  // namespace swale
