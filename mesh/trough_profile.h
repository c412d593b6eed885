#pragma once

#include "mesh/transition_layout.h"

#include <Eigen/Core>

#include <array>

namespace swale {

/// The mid-surface of a belt laid exactly on a trough: flat, a circular arc through the angle, straight wing; on five rolls
/// another arc in the wing. The coordinate s is the arc length from the centre line, so that the belt is not stretched across.
/// mm, rad.
struct TroughProfile {
    double angle = 0;  ///< of the first arc
    double half_flat = 0;
    double radius = 0;       ///< of the mid-surface
    double height = 0;       ///< of the flat above z = 0
    double inner_wing = 0;   ///< straight between both arcs
    double outer_angle = 0;  ///< of the second arc; 0: none

    /// (y, z) at arc length s; mirrored for negative s.
    Eigen::Vector2d at(double s) const;
    /// Arc lengths where the arc begins and ends.
    std::array<double, 2> arc_ends() const { return {half_flat, half_flat + radius * angle}; }
};

/// The held profile of the full sets (Section's `underside` in mm): by default the arc is tangent to the mid-surface of a belt
/// that lies on both rolls, half_flat = junction - (radius + underside) tan(angle / 2).
TroughProfile held_profile(const TransitionLayout& layout, double underside);

/// The same junction radius at another angle and height. Two and five rolls (these with the angle of their inner wings) have no
/// held profile: theirs is a place to start from.
TroughProfile profile_at(const TransitionLayout& layout, double underside, double angle, double height, double inner_angle = 0);

}  // namespace swale
