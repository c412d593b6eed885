#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <vector>

namespace swale {

/// One criterion in one converged state: value, limit, utilisation, place, source. A criterion without a limit in the case is
/// reported, not judged. The limits are `transition.limits`.
using Criterion = Judgement (*)(const TransitionCase&, const StateResult&);

Judgement judge_edge_tension(const TransitionCase& transition, const StateResult& state);      ///< edge tension / rated
Judgement judge_tension_min(const TransitionCase& transition, const StateResult& state);       ///< nowhere negative
Judgement judge_edge_strain(const TransitionCase& transition, const StateResult& state);       ///< advisory by default
Judgement judge_junction_strain(const TransitionCase& transition, const StateResult& state);   ///< bending at the junctions
Judgement judge_lift_off(const TransitionCase& transition, const StateResult& state);          ///< first full set's centre roll
Judgement judge_first_set_seated(const TransitionCase& transition, const StateResult& state);  ///< ratio, reported
Judgement judge_wing_line_force(const TransitionCase& transition, const StateResult& state);   ///< reported
Judgement judge_roll_force(const TransitionCase& transition, const StateResult& state);        ///< of one roll of a set
Judgement judge_junction_radius(const TransitionCase& transition, const StateResult& state);   ///< reported
Judgement judge_free_span(const TransitionCase& transition, const StateResult& state);         ///< over a gap, reported

Judgement judge_symmetric_wrinkling(const TransitionCase& transition, const StateResult& state);      ///< advisory
Judgement judge_antisymmetric_wrinkling(const TransitionCase& transition, const StateResult& state);  ///< advisory

Judgement judge_junction_beside_trough(const TransitionCase& transition, const StateResult& state);    ///< ratio, reported
Judgement judge_line_force_beside_trough(const TransitionCase& transition, const StateResult& state);  ///< ratio, reported

/// Every criterion, in the order of the report: one more is one file and one line here.
const std::vector<Criterion>& all_criteria();

/// All criteria in one converged state, held against its own limits; other shapes of its belt are left out.
std::vector<Judgement> judge_state(const TransitionCase& transition, const TensionState& state, const StateResult& result);

/// All criteria in all converged states, each held against its own limits; a state without a solution has none. `states` are
/// those of the case, in its order.
std::vector<Judgement> judge(const TransitionCase& transition, const std::vector<StateResult>& states);

}  // namespace swale
