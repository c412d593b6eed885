#pragma once

#include "mesh/transition_layout.h"
#include "solver/strain/belt_probe.h"
#include "solver/transition/belt_model.h"

#include <limits>
#include <vector>

namespace swale {

/// Where peaks are looked for: away from held or stuck lines, at whose free corner the strain is singular.
struct ReadingRange {
    double begin = 0, end = 0;       ///< material x [mm]
    std::vector<double> held_lines;  ///< inner ones, material x [mm]
    double excluded = 0;             ///< max(0.05 W, 4 t) [mm]

    bool holds(double x) const;
};

ReadingRange reading_range(const TransitionLayout& layout, const Section& section, const BeltModel& model);

/// A part of the belt, its borders included; material coordinates [mm].
struct Window {
    double x_from = -std::numeric_limits<double>::infinity(), x_to = std::numeric_limits<double>::infinity();
    double y_from = -std::numeric_limits<double>::infinity(), y_to = std::numeric_limits<double>::infinity();
};

/// The spans next to a place, one either way.
Window spans_around(const Patch& patch, double x, double y);

/// The belt at every place of its grid inside range and window, read once for all quantities.
std::vector<SurfacePoint> read_belt(const BeltProbe& probe, const ReadingRange& range, const Window& window = {});

}  // namespace swale
