#pragma once

#include <optional>

namespace swale {

/// Least troughability F/L (ISO 703) for a trough of that angle [rad]: ISO 14890 / DIN 22102, 20 to 60 deg in steps of 5,
/// between them interpolated; absent outside.
std::optional<double> least_troughability(double angle);

}  // namespace swale
