#include "mesh/quadrature.h"

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// Legendre polynomial and slope by the three-term recurrence (Abramowitz and Stegun 22.7.10).
std::pair<double, double> legendre(int n, double x) {
    double before = 1, value = x;
    for (int k = 2; k <= n; ++k) {
        const double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
        before = value;
        value = next;
    }
    return {value, n * (x * value - before) / (x * x - 1)};
}

// Nodes and weights on [-1, 1]: the roots of P_n, w = 2 / ((1 - x^2) P_n'(x)^2).
std::vector<std::pair<double, double>> legendre_nodes(int n) {
    if (n == 1) return {{0.0, 2.0}};
    std::vector<std::pair<double, double>> nodes;
    for (int k = n - 1; k >= 0; --k) {
        double x = std::cos(std::numbers::pi * (k + 0.75) / (n + 0.5));
        for (int i = 0; i < 20; ++i) {
            const auto [value, slope] = legendre(n, x);
            x -= value / slope;
        }
        const double slope = legendre(n, x).second;
        nodes.emplace_back(x, 2 / ((1 - x * x) * slope * slope));
    }
    return nodes;
}

}  // namespace

LineRule gauss_rule(const CubicBasis& basis, int per_span) {
    if (per_span < 1 || per_span > 8) throw std::logic_error("a Gauss rule has 1 to 8 points a span");
    LineRule rule{per_span, {}};
    const auto nodes = legendre_nodes(per_span);
    for (int s = 0; s < basis.spans(); ++s) {
        const double begin = basis.breaks()[s], half = (basis.breaks()[s + 1] - begin) / 2;
        for (const auto& [node, weight] : nodes) {
            const double x = begin + half * (1 + node);
            rule.points.push_back({x, half * weight, basis.at(x, s)});
        }
    }
    return rule;
}

}  // namespace swale
