#pragma once

#include "mesh/cubic_basis.h"

#include <utility>
#include <vector>

namespace swale {

/// Force per width along a roll in rows: places across [mm] and N/mm, in order. They are the Gauss points, equally many in
/// every span that they reach.
using LineForce = std::vector<std::pair<double, double>>;

/// What of a line force a grid can tell.
struct LineForceResolution {
    /// Of a span [mm]. A longer one bends less easily than the cover gives way: the pressure inside it belongs to the grid, its
    /// force does not, so its mean stands for it.
    double longest_span = 0;
    /// Of the strip that a peak is a mean of [mm]. A cover is a foundation of springs only over widths of its thickness; on a
    /// roll that carries no more than the belt's edge, narrower peaks grow with every refinement.
    double width = 0;
};

struct LineForcePeak {
    double y = 0;      ///< middle of the strip [mm]
    double force = 0;  ///< mean over it [N/mm]
};

/// The strip under the largest force. No rows: zero.
LineForcePeak largest_line_force(const LineForce& rows, const CubicBasis& across, const LineForceResolution& resolution);

}  // namespace swale
