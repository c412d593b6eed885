#include "solver/contact/contact_law.h"

namespace swale {

// Indentation of the rounded law: with d = corner - g,  p = k d^2/(4 corner) for |g| < corner,  p = -k g below.

double ContactLaw::energy(double gap) const {
    if (gap >= corner) return 0;
    const double d = corner - gap;
    if (gap > -corner) return foundation * d * d * d / (12 * corner);
    return foundation * (gap * gap / 2 + corner * corner / 6);
}

double ContactLaw::pressure(double gap) const {
    if (gap >= corner) return 0;
    const double d = corner - gap;
    return gap > -corner ? foundation * d * d / (4 * corner) : -foundation * gap;
}

double ContactLaw::stiffness(double gap) const {
    if (gap >= corner) return 0;
    return gap > -corner ? foundation * (corner - gap) / (2 * corner) : foundation;
}

}  // namespace swale
