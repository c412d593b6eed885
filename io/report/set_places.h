#pragma once

#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// Where a set stands under the unstretched belt.
struct SetPlace {
    std::string name;  ///< "station 1", "set 2"
    double x = 0;      ///< [mm]
};

std::vector<SetPlace> set_places(const StateResult& state);

}  // namespace swale
