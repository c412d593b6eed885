#pragma once

#include "solver/design/headroom.h"
#include "solver/sensitivity.h"
#include "solver/transition.h"
#include "solver/transition/grid_ladder.h"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace swale {

/// A state of one arrangement solved as far as its criteria need: no eigenvalues, no samples, no other far end.
struct TrialState {
    TransitionLayout layout;
    GridSolution coarse;              ///< where the next trial starts
    std::vector<Headroom> headrooms;  ///< of what is judged
    std::string why_none;             ///< why there is no solution; empty if there is one
};

/// What one arrangement leaves of its limits, in the states that were looked at.
struct Trial {
    std::vector<Headroom> headrooms;
    std::string why_none;  ///< of the first state without a solution

    bool solved() const { return why_none.empty(); }
    /// The headroom nearest to its limit, or over it the farthest; null if nothing is judged.
    const Headroom* least() const;
    bool passes() const { return solved() && (!least() || least()->share >= 0); }
    /// Share of the binding limit that is left: of the least headroom, -1 without a solution, infinite if nothing is judged.
    double headroom() const;
    /// Criterion and state nearest to a limit, or why there is none.
    std::string binding() const;
};

/// The coarse grid alone tells where to look: a third of the work, its error unknown.
enum class TrialGrid { coarse, fine };

/// Tries arrangements of one case one after the other. Each state starts from where it was at the arrangement before, carried
/// along with pulley and sets; two states at a time. The far end's errors are those that the last whole solution showed.
class Trials {
  public:
    Trials(const TransitionCase& given, ProgressListener listener);

    /// `slopes_by`: parameters by which the headrooms' slopes are wanted.
    Trial of(const TransitionCase& arranged, const std::vector<std::size_t>& states, const std::vector<Parameter>& slopes_by,
             TrialGrid grid = TrialGrid::fine);

    /// The whole solution, from no start, as `solve` gives it: what is reported. Sets and far-end errors of later trials are
    /// from it.
    TransitionResult whole(const TransitionCase& arranged);

    std::vector<std::size_t> all_states() const;
    int states_solved() const { return states_solved_; }  ///< of trials
    int whole_solutions() const { return whole_solutions_; }

  private:
    using FarEndShares = std::array<double, 8>;  // in the order of Readings::all, of the readings

    TrialState solved(const TransitionCase& arranged, std::size_t state, const std::vector<Parameter>& slopes_by,
                      TrialGrid grid) const;
    GridLadder ladder_of(const TransitionCase& arranged, std::size_t state, const GridSolution& coarse, TrialGrid grid) const;
    GridSolution coarse_solution(const TransitionCase& arranged, std::size_t state) const;
    void add_headrooms(const TransitionCase& arranged, std::size_t state, const GridLadder& ladder,
                       const std::vector<Parameter>& slopes_by, TrialState& trial) const;

    ProgressListener listener_;
    int sets_;
    bool endless_;
    std::map<std::size_t, TrialState> last_;  // by state
    std::vector<FarEndShares> far_end_;       // by state
    int states_solved_ = 0, whole_solutions_ = 0;
};

/// The headrooms of a whole solution, without slopes.
Trial as_trial(const TransitionResult& result);

}  // namespace swale
