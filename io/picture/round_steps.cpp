#include "io/picture/round_steps.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

double round_step(double least) {
    const double power = std::pow(10, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 2.5, 5.0})
        if (factor * power >= least * (1 - 1e-9)) return factor * power;
    return 10 * power;
}

std::vector<double> round_steps(double low, double high, int count) {
    std::vector<double> steps;
    if (!(high > low)) return {low};
    const double step = round_step((high - low) / count);
    for (double k = std::ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; ++k) steps.push_back(k * step + 0.0);
    return steps;
}

namespace {

int decimals_of(double step) {
    for (int decimals = 0; decimals < 9; ++decimals) {
        const double scaled = step * std::pow(10, decimals);
        if (std::abs(scaled - std::round(scaled)) < 1e-6 * scaled) return decimals;
    }
    return 9;
}

}  // namespace

std::vector<std::string> step_labels(const std::vector<double>& steps) {
    const double step = steps.size() > 1 ? steps[1] - steps[0] : 1;
    std::vector<std::string> labels;
    for (const double value : steps) labels.push_back(fmt::format("{:.{}f}", value, decimals_of(step)));
    return labels;
}

}  // namespace swale
