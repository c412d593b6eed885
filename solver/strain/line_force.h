#pragma once

#include "mesh/cubic_basis.h"

#include <utility>
#include <vector>

namespace swale {

/// Force per width along a roll: places across [mm] and N/mm, in order.
using LineForce = std::vector<std::pair<double, double>>;

/// The part of a line force that its grid resolves. `rows` are Gauss points, equally many in every span of `across` that they
/// reach. Spans up to `longest` keep theirs. A longer span bends less easily than the cover gives way, so that the pressure
/// inside it belongs to the grid; its force does not: it gets one row at its middle with the mean.
LineForce resolved_line_force(const LineForce& rows, const CubicBasis& across, double longest);

}  // namespace swale
