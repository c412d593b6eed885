#pragma once

#include "materials/belt.h"

#include <optional>

namespace swale {

/// Adds a warning for whatever a certificate says that can't be true together, or that no belt of the catalogue's construction
/// has: `catalogue` is the belt before anything was measured. `elongation` at a tenth of the breaking strength (ISO 283), if
/// given beside a modulus. (A troughability warns where it is taken: override_troughability.)
void warn_of_contradictions(const Belt& catalogue, std::optional<double> elongation, Belt& belt);

}  // namespace swale
