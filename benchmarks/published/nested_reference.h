#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <optional>

namespace swale::benchmark {

/// The first state of a case on its usual coarse grid with every span halved again and again, so that each grid holds the one
/// before.
struct NestedReference {
    Readings readings;  ///< of the finest grid, with errors estimated from the last two
    int halvings = 0;
    int unknowns = 0;
};

/// `halvings` of them, fewer if the next grid has more than `most_unknowns`; empty if a grid does not converge.
std::optional<NestedReference> nested_reference(const TransitionCase& transition, int halvings, int most_unknowns);

}  // namespace swale::benchmark
