#include "solver/screening/troughability_rule.h"

#include "materials/troughability.h"
#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <numbers>

namespace swale {

namespace {

// ISO 14890 / DIN 22102, from memory (sure); 0.12 at 30 deg was also seen on a published certificate.
constexpr double first_angle = 20, step = 5;  // [deg]
constexpr std::array minima{0.08, 0.10, 0.12, 0.14, 0.16, 0.18, 0.20, 0.23, 0.26};

}  // namespace

std::optional<double> least_troughability(double angle) {
    const double place = (angle * 180 / std::numbers::pi - first_angle) / step;
    if (place < -1e-9 || place > minima.size() - 1 + 1e-9) return {};
    const int k = std::clamp(static_cast<int>(place), 0, static_cast<int>(minima.size()) - 2);
    return minima[k] + (place - k) * (minima[k + 1] - minima[k]);
}

std::vector<std::string> troughability_practice(const ScreeningCase& screening) {
    const Belt& belt = screening.transition.belt;
    const std::optional<double> least = least_troughability(screening.strips.angle);
    if (!least || !(belt.section.mass > 0)) return {};
    const double ratio = troughability_of_stiffness(belt.section.bending(1, 1), belt.width, belt.section.mass);
    if (ratio >= *least) return {};
    return {
        fmt::format("this belt's troughability F/L is {:.2g}, a trough of {:.3g} deg asks for {:.2g} (ISO 703; ISO 14890 / "
                    "DIN 22102, from memory (sure)): it is too stiff across to lie in it",
                    ratio, screening.strips.angle * 180 / std::numbers::pi, *least)};
}

}  // namespace swale
