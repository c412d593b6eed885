#include "solver/as_built.h"

#include "solver/design/levers.h"
#include "solver/design/single_change.h"
#include "solver/design/trial.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace swale {

namespace {

Arrangement arrangement(std::string name, const TransitionCase& transition, const Trial& trial) {
    return {std::move(name), transition, trial.passes(), trial.headroom(), trial.binding()};
}

// Half of the belt if that is enough: the drawing is as a rule the same left and right.
TransitionCase as_drawn(const TransitionCase& surveyed) {
    TransitionCase transition = surveyed;
    transition.layout = surveyed.drawn.value();
    transition.drawn.reset();
    if (transition.layout.same_left_and_right()) transition.settings.model = Symmetry::half;
    return transition;
}

}  // namespace

AsBuilt judge_as_built(const TransitionCase& surveyed, const SizingBounds& bounds, const ProgressListener& listener) {
    AsBuilt answer;
    const TransitionCase drawn = as_drawn(surveyed);
    answer.drawn = arrangement("as drawn", drawn, as_trial(solve_transition(drawn, listener)));
    Trials trials(surveyed, listener);
    answer.result = trials.whole(surveyed);
    answer.measured = arrangement("as measured", surveyed, as_trial(answer.result));
    answer.levers = levers_of(surveyed, answer.result, parameters_of_standing);
    for (const SingleChange& change : single_changes(surveyed, bounds, answer.levers))
        answer.changes.push_back(
            arrangement(change.name, change.transition, trials.of(change.transition, trials.all_states(), {})));
    const auto most_first = [&] { std::ranges::stable_sort(answer.changes, std::greater(), &Arrangement::headroom); };
    most_first();
    if (answer.changes.empty()) return answer;
    Arrangement& best = answer.changes.front();
    best = arrangement(best.name, best.transition, as_trial(trials.whole(best.transition)));
    most_first();
    return answer;
}

}  // namespace swale
