#pragma once

#include "mesh/transition_layout.h"
#include "solver/strain/belt_probe.h"
#include "solver/transition/belt_model.h"
#include "solver/transition_result.h"

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

/// Readings of one grid, still without error estimates; of an endless trough also those of its running bays.
Readings take_readings(const BeltProbe& probe, const TransitionLayout& layout, const Section& section, const BeltModel& model);

/// Largest |k22| times the farther face's distance within a tenth of the width from the junction.
Reading junction_bending_strain(const BeltProbe& probe, const TransitionLayout& layout, const Section& section,
                                const ReadingRange& range);

/// Mean longitudinal strain at the far end.
double far_strain(const BeltProbe& probe);

}  // namespace swale
