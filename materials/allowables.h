#pragma once

#include "materials/belt.h"

#include <string>

namespace swale {

/// A limit that holds unless the user sets one. `advisory`: over it is a warning, not a failure.
struct Allowable {
    double value = 0;
    bool advisory = false;
    std::string source;
};

/// Highest edge tension over rated tension.
Allowable allowable_edge_tension(Carcass carcass);

/// The same as ISO 5293 takes it, for those who choose that standard.
Allowable allowable_edge_tension_iso_5293(Carcass carcass);

/// Lowest tension anywhere [N/mm].
Allowable allowable_tension_min(Carcass carcass);

/// Highest stretch of the edge, less one.
Allowable allowable_edge_strain(Carcass carcass);

}  // namespace swale
