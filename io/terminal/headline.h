#pragma once

#include "solver/transition_result.h"

#include <string>

namespace swale {

/// The verdict in a sentence or two: what is over or closest to its limit, in which state; which states have no solution.
std::string headline(const TransitionResult& result);

/// A criterion's value or limit as people read it: strains in percent, three digits, with the unit unless it is a plain number.
struct PrintScale {
    double factor = 1;
    std::string unit;
};
PrintScale print_scale(const Judgement& judgement);

}  // namespace swale
