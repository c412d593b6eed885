#pragma once

#include "mesh/transition_layout.h"

namespace swale {

/// Strips that run straight from the pulley line to the trough, each on its own: what every hand method assumes. A strip's
/// strain is that of the centre line plus `excess(y) / L^2`. Lengths in mm.
struct StraightStrips {
    double width = 0;  ///< of the belt
    double wing = 0;   ///< F, belt width on one wing roll
    double angle = 0;  ///< of the trough [rad]
    double lift = 0;   ///< of the pulley above the full sets' centre rolls

    /// y^2 (1 - cos a) - y lift sin a at y from the junction outwards [mm^2]: half the square of the strip's offset, less that
    /// of the centre line. Derived from plane geometry, small slopes.
    double excess(double y) const;
    double edge() const { return excess(wing); }
    /// Where the slackest strip lies, from the junction; in the wing if the pulley is raised.
    double slackest() const;
    double lowest() const { return excess(slackest()); }
    /// Mean over the width, the centre part without excess.
    double mean() const;
    /// The same if tension is taken as linear over the wing between its ends, as the published hand methods do.
    double linear_mean() const { return wing / width * edge(); }
    /// Lift at which the edge has no excess: F tan(a/2).
    double neutral_lift() const;
};

StraightStrips straight_strips(const TransitionLayout& layout);

}  // namespace swale
