#include "solver/screening/straight_strips.h"

#include <algorithm>
#include <cmath>

namespace swale {

double StraightStrips::excess(double y) const {
    return y * y * (1 - std::cos(angle)) - y * lift * std::sin(angle);
}

double StraightStrips::slackest() const {
    // d excess / dy = 0 at y = lift sin a / (2 (1 - cos a)) = lift / (2 tan(a/2)).
    return angle > 0 ? std::clamp(lift / (2 * std::tan(angle / 2)), 0.0, wing) : 0;
}

double StraightStrips::mean() const {
    // 2/W times the integral of the excess over one wing.
    const double sum = wing * wing * wing / 3 * (1 - std::cos(angle)) - wing * wing / 2 * lift * std::sin(angle);
    return 2 * sum / width;
}

double StraightStrips::neutral_lift() const {
    return wing * std::tan(angle / 2);
}

StraightStrips straight_strips(const TransitionLayout& layout) {
    return {layout.belt_width, layout.belt_width / 2 - layout.junction(), layout.trough.angle, layout.pulley.lift};
}

}  // namespace swale
