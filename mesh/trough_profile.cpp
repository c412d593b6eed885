#include "mesh/trough_profile.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {

namespace {

// Walks from the centre line outwards until `left` is used up.
class Walk {
  public:
    Walk(double way, double height) : left_(way), place_(0, height) {}

    void straight(double length) {
        const double gone = std::clamp(left_, 0.0, length);
        place_ += gone * Eigen::Vector2d(std::cos(direction_), std::sin(direction_));
        left_ -= length;
    }

    void arc(double radius, double angle) {
        const double turned = std::clamp(left_ / radius, 0.0, angle), end = direction_ + turned;
        place_ += radius * Eigen::Vector2d(std::sin(end) - std::sin(direction_), std::cos(direction_) - std::cos(end));
        direction_ += angle;
        left_ -= radius * angle;
    }

    const Eigen::Vector2d& place() const { return place_; }

  private:
    double left_, direction_ = 0;
    Eigen::Vector2d place_;
};

}  // namespace

Eigen::Vector2d TroughProfile::at(double s) const {
    Walk walk(std::abs(s), height);
    walk.straight(half_flat);
    walk.arc(radius, angle);
    if (outer_angle > 0) {
        walk.straight(inner_wing);
        walk.arc(radius, outer_angle);
    }
    walk.straight(std::numeric_limits<double>::infinity());
    return {std::copysign(walk.place().x(), s), walk.place().y()};
}

namespace {

// A roll-carried belt has no given radius; this one keeps the arc inside the centre roll.
double usual_radius(const TransitionLayout& layout, double underside, double angle) {
    const double widest = 0.8 * layout.junction() / std::tan(angle / 2) - underside;
    return std::min(150.0, widest);
}

// An arc tangent to both wings; its lowest point stands (R + u)(1 / cos a - 1) above a flat belt in the wings' meeting point.
TroughProfile of_two_rolls(double underside, double angle, double height) {
    constexpr double radius = 150;
    return {angle, 0, radius, height + (radius + underside) * (1 / std::cos(angle) - 1)};
}

TroughProfile of_five_rolls(const TransitionLayout& layout, double underside, double angle, double height, double inner_angle) {
    const double inner = std::tan(inner_angle / 2), outer = std::tan((angle - inner_angle) / 2);
    const double wing = layout.trough.inner_roll + layout.trough.roll_gap;
    const double widest = 0.8 * std::min(layout.junction() / std::max(inner, 1e-9), wing / (inner + outer)) - underside;
    const double radius = std::min(150.0, widest), reach = radius + underside;
    return {inner_angle, layout.junction() - reach * inner, radius,
            height,      wing - reach * (inner + outer),    angle - inner_angle};
}

}  // namespace

TroughProfile profile_at(const TransitionLayout& layout, double underside, double angle, double height, double inner_angle) {
    if (angle < 1e-9) return {0, layout.belt_width, 1, height};
    if (layout.trough.rolls == 2) return of_two_rolls(underside, angle, height);
    if (layout.trough.rolls == 5) return of_five_rolls(layout, underside, angle, height, inner_angle);
    const double given = layout.trough.junction_radius;
    const double radius = given > 0 ? given : usual_radius(layout, underside, angle);
    return {angle, layout.junction() - (radius + underside) * std::tan(angle / 2), radius, height};
}

TroughProfile held_profile(const TransitionLayout& layout, double underside) {
    TroughProfile profile = profile_at(layout, underside, layout.trough.angle, 0, layout.trough.inner_angle);
    if (layout.trough.flat_width) profile.half_flat = *layout.trough.flat_width / 2;
    return profile;
}

}  // namespace swale
