#pragma once

#include "materials/section.h"
#include "mesh/transition_layout.h"
#include "solver/transition_result.h"

#include <array>
#include <vector>

namespace swale {

/// What decides where on the belt a peak is looked for, and at which distance its faces are.
struct PeakContext {
    const TransitionLayout& layout;
    const Section& section;
    double edge = 0;  ///< |y| of the belt's edges [mm]
};

/// A reading that is the largest value of a field in a part of the belt, or with `sign` -1 the lowest.
struct PeakKind {
    Reading Readings::*reading;
    double sign;
    bool (*counts)(const SurfacePoint& point, const PeakContext& context);
    double (*value)(const SurfacePoint& point, const PeakContext& context);
};

/// Edge and centre strain, tensions, bending at the junctions (|k22| times the farther face's distance within a tenth of the
/// width from one) and strain of the faces (the principal strain of Green as stretch less one: sqrt(1 + 2 e) - 1).
extern const std::array<PeakKind, 6> peak_kinds;
extern const PeakKind& junction_kind;

/// Of these points; without any, zero at the origin.
Reading peak(const PeakKind& kind, const std::vector<SurfacePoint>& points, const PeakContext& context);

}  // namespace swale
