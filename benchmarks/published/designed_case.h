#pragma once

#include "solver/transition_case.h"

#include <string>
#include <vector>

namespace swale::benchmark {

/// The fixed list of the error study: fabric, steel cord and thin belts; 500 to 2000 mm; 20 to 45 deg; slack to rated; flush to
/// the whole trough depth; short to long; none to two intermediate sets. One state each, the same number of sets for all grids.
struct DesignedCase {
    std::string name;
    TransitionCase transition;
};

std::vector<DesignedCase> designed_cases();

}  // namespace swale::benchmark
