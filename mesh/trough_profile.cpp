#include "mesh/trough_profile.h"

#include <algorithm>
#include <cmath>

namespace swale {

Eigen::Vector2d TroughProfile::at(double s) const {
    const double way = std::abs(s), turned = std::clamp((way - half_flat) / radius, 0.0, angle);
    const double straight = std::max(0.0, way - half_flat - radius * angle);
    const double y = std::min(way, half_flat) + radius * std::sin(turned) + straight * std::cos(angle);
    const double z = height + radius * (1 - std::cos(turned)) + straight * std::sin(angle);
    return {std::copysign(y, s), z};
}

namespace {

// A roll-carried belt has no given radius; this one keeps the arc inside the centre roll.
double usual_radius(const TransitionLayout& layout, double underside, double angle) {
    const double widest = 0.8 * layout.junction() / std::tan(angle / 2) - underside;
    return std::min(150.0, widest);
}

}  // namespace

TroughProfile profile_at(const TransitionLayout& layout, double underside, double angle, double height) {
    if (angle < 1e-9) return {0, layout.belt_width, 1, height};
    const double given = layout.trough.junction_radius;
    const double radius = given > 0 ? given : usual_radius(layout, underside, angle);
    return {angle, layout.junction() - (radius + underside) * std::tan(angle / 2), radius, height};
}

TroughProfile held_profile(const TransitionLayout& layout, double underside) {
    TroughProfile profile = profile_at(layout, underside, layout.trough.angle, 0);
    if (layout.trough.flat_width) profile.half_flat = *layout.trough.flat_width / 2;
    return profile;
}

}  // namespace swale
