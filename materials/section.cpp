#include "materials/section.h"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace swale {

double Section::farther_face() const {
    return std::max(underside, thickness - underside);
}

Eigen::Matrix3d orthotropic(double along, double across, double coupling, double shear) {
    Eigen::Matrix3d law;
    law << along, coupling, 0, coupling, across, 0, 0, 0, shear;
    return law;
}

std::string why_not_positive_definite(const Eigen::Matrix3d& law, const std::string& name) {
    std::ostringstream why;
    for (int i = 0; i < 3; ++i)
        if (!(law(i, i) > 0)) {
            why << name << (i == 2 ? 6 : i + 1) << (i == 2 ? 6 : i + 1) << " = " << law(i, i) << " is not positive";
            return why.str();
        }
    const double bound = std::sqrt(law(0, 0) * law(1, 1));
    if (std::abs(law(0, 1)) < bound) return {};
    why << "|" << name << "12| = " << std::abs(law(0, 1)) << " must be below sqrt(" << name << "11 " << name
        << "22) = " << bound;
    return why.str();
}

}  // namespace swale
