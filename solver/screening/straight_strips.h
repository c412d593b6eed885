#pragma once

#include "mesh/transition_layout.h"

namespace swale {

/// Strips that run straight from the pulley line to the trough, each on its own: what every hand method assumes. A strip's
/// strain is that of the centre line plus `excess(y) / L^2`. Lengths in mm.
struct StraightStrips {
    double width = 0;        ///< of the belt
    double wing = 0;         ///< F, belt width on one outermost roll
    double angle = 0;        ///< of the trough [rad]
    double lift = 0;         ///< of the pulley above the full sets' centre rolls
    double inner_wing = 0;   ///< belt width on an inner wing of five rolls
    double inner_angle = 0;  ///< its angle [rad]

    /// y^2 (1 - cos a) - y lift sin a at y from the innermost junction outwards, on five rolls
    ///   y^2 (1 - cos a) + y (p (1 - cos a) + q sin a) + (p^2 + q^2)/2 - (q + y sin a) lift
    /// on the outer wing, y from its junction, that lies p further in and q higher than in the flat belt [mm^2]: half the
    /// square of the strip's offset, less that of the centre line. Derived from plane geometry, small slopes.
    double excess(double y) const;
    double edge() const { return excess(inner_wing + wing); }
    /// Where the slackest strip lies, from the innermost junction; in a wing if the pulley is raised.
    double slackest() const;
    double lowest() const { return excess(slackest()); }
    /// Mean over the width, the centre part without excess.
    double mean() const;
    /// The same of two or three rolls if tension is taken as linear over the wing between its ends, as the published hand
    /// methods do.
    double linear_mean() const { return wing / width * edge(); }
    /// Lift at which the edge has no excess; without inner wings F tan(a/2).
    double neutral_lift() const;
};

StraightStrips straight_strips(const TransitionLayout& layout);

}  // namespace swale
