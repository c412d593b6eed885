#pragma once

#include "solver/design/arrangement.h"
#include "solver/design/distance_search.h"
#include "solver/design/optimum.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// Looks for arrangements of one case within bounds and remembers what was tried.
class Sizer {
  public:
    Sizer(const TransitionCase& given, const SizingBounds& bounds, const ProgressListener& listener);

    /// The arrangement at its shortest distance, proved by a whole solution; at the longest where none passes.
    Arrangement shortest(const TransitionCase& arrangement);
    /// The same from trials alone: good enough to compare.
    Arrangement nearly_shortest(const TransitionCase& arrangement);
    /// The values of the variables that leave most, from several starts, as they would be built.
    Arrangement most_headroom(const TransitionCase& arrangement, const std::vector<Variable>& variables,
                              const std::vector<std::vector<double>>& starts);
    /// The variables, distance the first of them, at the smallest distance; as they would be built but for the distance.
    TransitionCase shortest_with(const TransitionCase& arrangement, const std::vector<Variable>& variables);

    /// One trial of all states.
    Arrangement tried_as_it_is(const TransitionCase& arrangement);
    /// Solves an arrangement whole and keeps the result.
    Arrangement proved(const TransitionCase& arrangement);
    /// The whole solution of an arrangement: the last one, if it was of this.
    const TransitionResult& result_of(const TransitionCase& arrangement);

    const std::vector<SizingStep>& steps() const { return steps_; }
    const Trials& trials() const { return trials_; }

  private:
    Trial tried(const TransitionCase& arrangement, const std::vector<std::size_t>& states,
                const std::vector<Parameter>& slopes_by, TrialGrid grid = TrialGrid::fine);
    Trial tried_at(const TransitionCase& arrangement, const DistanceGuess& guess, TrialGrid grid);
    double likely_shortest(const TransitionCase& arrangement);
    DistanceSearch search_from(const TransitionCase& arrangement);
    void go_on(const TransitionCase& arrangement, DistanceSearch& search, TrialGrid grid = TrialGrid::fine);
    std::vector<std::size_t> states_for(const DistanceGuess& guess) const;
    Arrangement as_found(const TransitionCase& arrangement, const DistanceSearch& search) const;

    const TransitionCase& given_;
    SizingBounds bounds_;
    Trials trials_;
    TransitionResult result_;
    TransitionLayout layout_of_result_;
    std::vector<SizingStep> steps_;
    std::map<std::size_t, DistanceTrial> last_by_state_;  // whose slopes are known, of the arrangement at hand
};

}  // namespace swale
