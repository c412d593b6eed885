#include "solver/transition/start_surface.h"

#include "mesh/belt_grid.h"
#include "mesh/idler_set.h"

#include <algorithm>
#include <cmath>

namespace swale {

StartSurface::StartSurface(const TransitionLayout& layout, int sets, double underside)
    : end_(model_length(layout, sets)),
      rounding_(std::min(150.0, layout.distance / 6)),
      pulley_radius_(layout.pulley.diameter / 2 + underside),
      pulley_height_(layout.pulley.lift),
      held_(layout.trough.support == Support::held) {
    sections_.push_back({0, 0, profile_at(layout, underside, 0, layout.pulley.lift)});
    for (const IdlerSet& set : idler_sets(layout, sets)) {
        const bool full = set.x >= layout.distance - 1e-9 && !set.measured;
        sections_.push_back(
            {set.x, set.path,
             full ? held_profile(layout, underside) : profile_at(layout, underside, set.angle, set.lift, set.inner_angle)});
    }
}

// (y, z) on the straight line between the profiles before and behind x.
Eigen::Vector2d StartSurface::ruled(double x, double y) const {
    const auto behind = std::find_if(sections_.begin(), sections_.end(), [&](const Section& s) { return s.x > x; });
    if (behind == sections_.begin()) return sections_.front().profile.at(y);
    if (behind == sections_.end()) return sections_.back().profile.at(y);
    const auto before = behind - 1;
    const double share = (x - before->x) / (behind->x - before->x);
    return (1 - share) * before->profile.at(y) + share * behind->profile.at(y);
}

// x in space of a place on the centre line; level behind the last section.
double StartSurface::x_at(double path) const {
    const auto behind = std::find_if(sections_.begin(), sections_.end(), [&](const Section& s) { return s.path > path; });
    if (behind == sections_.end()) return sections_.back().x + path - sections_.back().path;
    const auto before = behind - 1;
    return before->x + (behind->x - before->x) * (path - before->path) / (behind->path - before->path);
}

Eigen::Vector3d StartSurface::at(double path, double y) const {
    if (path < 0) {
        const double turned = -path / pulley_radius_;
        return {-pulley_radius_ * std::sin(turned), y, pulley_height_ - pulley_radius_ * (1 - std::cos(turned))};
    }
    const double x = x_at(path);
    const double reach = held_ ? std::min({rounding_, x, end_ - x}) : std::min(rounding_, x);
    constexpr int samples = 12;
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    for (int k = 0; k < samples; ++k) mean += ruled(x + reach * (2 * (k + 0.5) / samples - 1), y) / samples;
    return {x, mean.x(), mean.y()};
}

}  // namespace swale
