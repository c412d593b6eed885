#include "mesh/graded_breaks.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

double wanted_size(double x, double longest, const std::vector<FinePlace>& places) {
    double size = longest;
    for (const FinePlace& place : places)
        size = std::min(size, place.size + place.growth * std::max(0.0, std::abs(x - place.position) - place.reach));
    return size;
}

// Breaks strictly inside (begin, end) at equal shares of the integral of dx / h, by the midpoint rule on a fine ladder.
void divide(double begin, double end, double longest, const std::vector<FinePlace>& places, std::vector<double>& breaks) {
    const int steps = std::max(16, static_cast<int>(2 * (end - begin)));
    const double step = (end - begin) / steps;
    std::vector<double> sum(steps + 1, 0.0);
    for (int k = 0; k < steps; ++k) sum[k + 1] = sum[k] + step / wanted_size(begin + (k + 0.5) * step, longest, places);
    const int spans = std::max(1, static_cast<int>(std::ceil(sum[steps] - 1e-6)));
    int k = 0;
    for (int s = 1; s < spans; ++s) {
        const double share = sum[steps] * s / spans;
        while (sum[k + 1] < share) ++k;
        breaks.push_back(begin + step * (k + (share - sum[k]) / (sum[k + 1] - sum[k])));
    }
}

}  // namespace

std::vector<double> graded_breaks(double begin, double end, double longest, const std::vector<FinePlace>& places,
                                  std::vector<double> pinned) {
    std::erase_if(pinned, [&](double x) { return x <= begin + 1e-3 || x >= end - 1e-3; });
    std::sort(pinned.begin(), pinned.end());
    pinned.erase(std::unique(pinned.begin(), pinned.end(), [](double a, double b) { return b - a < 1e-3; }), pinned.end());
    pinned.push_back(end);
    std::vector<double> breaks{begin};
    for (const double pin : pinned) {
        divide(breaks.back(), pin, longest, places, breaks);
        breaks.push_back(pin);
    }
    return breaks;
}

}  // namespace swale
