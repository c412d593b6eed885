#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What a method worked by hand says of a transition.
struct HandMethod {
    std::string name;
    std::optional<double> minimum_distance;  ///< [mm]; absent: it gives none here, `remark` says why
    std::optional<double> edge_strain;       ///< at the case's own distance under its highest tension; stretch less one
    std::optional<double> centre_strain;     ///< the same of the centre line under its lowest tension
    std::string remark;                      ///< what binds
    std::string source;
    std::string validity;  ///< what it holds for
};

/// The hand methods side by side and what practice adds.
struct Screening {
    std::vector<HandMethod> methods;
    std::optional<double> neutral_lift;  ///< pulley lift at which straight strips strain edge and centre alike [mm]
    std::vector<std::string> practice;   ///< rules of the trade for this case, each with its source
};

/// All hand methods on a case: some microseconds. States drawn by a length are left out; without one of a given tension the
/// methods that need it say so.
Screening screen(const TransitionCase& transition);

/// Where a hand method that gives strains and the shell differ by more than a tenth in the strain of edge or centre, a sentence
/// with the numbers and the reason.
std::vector<std::string> compare(const TransitionCase& transition, const std::vector<StateResult>& states);

}  // namespace swale
