#pragma once

#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// The verdict in a sentence or two: what is over or closest to its limit, in which state; which states have no solution; how
/// many warnings stand under the notes: `belt_warnings`, what in the belt's data contradicts itself, and those of the states.
std::string headline(const TransitionResult& result, const std::vector<std::string>& belt_warnings = {});

/// A criterion's value or limit as people read it: strains in percent, three digits, with the unit unless it is a plain number.
struct PrintScale {
    double factor = 1;
    std::string unit;
};
PrintScale print_scale(const Judgement& judgement);

}  // namespace swale
