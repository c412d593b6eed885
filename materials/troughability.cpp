#include "materials/troughability.h"

#include "materials/gravity.h"

#include <fmt/core.h>

#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace swale {

namespace {

constexpr int steps = 100;  // of Runge and Kutta's fourth order over half the strip: F/L to 1e-9
constexpr int bisections = 50;
constexpr double deepest = 0.45;

/// Slope angle, curvature and height at a place of the strip.
using State = std::array<double, 3>;

State derivative(double x, const State& s, double load) {
    return {s[1], -load * x * std::cos(s[0]), std::sin(s[0])};
}

State moved(const State& s, const State& rate, double by) {
    return {s[0] + by * rate[0], s[1] + by * rate[1], s[2] + by * rate[2]};
}

// From the middle, where the curvature is given, to the end; no farther than where the strip stands upright, which a strip that
// hangs by free ends nowhere does: its middle is then too much bent, or too little.
State at_end(double curvature, double load) {
    State s{0, curvature, 0};
    const double h = 0.5 / steps;
    for (int k = 0; k < steps; ++k) {
        const double x = k * h;
        const State a = derivative(x, s, load), b = derivative(x + h / 2, moved(s, a, h / 2), load),
                    c = derivative(x + h / 2, moved(s, b, h / 2), load), d = derivative(x + h, moved(s, c, h), load);
        for (int i = 0; i < 3; ++i) s[i] += h / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
        if (std::abs(s[0]) >= std::numbers::pi / 2) return s;
    }
    return s;
}

// The place in [low, high] up to which `below` holds.
template <class Below>
double bisected(double low, double high, const Below& below) {
    for (int k = 0; k < bisections; ++k) {
        const double middle = (low + high) / 2;
        (below(middle) ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace

double sag_ratio(double load) {
    // The end is free of moment; a slope only takes from the moment G/8 that the middle of a flat strip has.
    const double middle = bisected(0, load / 8, [&](double curvature) {
        const State end = at_end(curvature, load);
        return end[0] < std::numbers::pi / 2 && end[1] < 0;
    });
    return at_end(middle, load)[2];
}

double load_of_sag_ratio(double wanted) {
    if (!(wanted > 0 && wanted < deepest))
        throw std::invalid_argument(fmt::format("a troughability of {}; it lies between 0 and {}", wanted, deepest));
    double high = 384 * wanted / 5;  // small sag
    while (sag_ratio(high) < wanted) high *= 2;
    return bisected(0, high, [&](double load) { return sag_ratio(load) < wanted; });
}

double stiffness_of_troughability(double ratio, double width, double mass) {
    return mass * gravity * std::pow(width, 3) / load_of_sag_ratio(ratio);
}

double troughability_of_stiffness(double stiffness, double width, double mass) {
    return sag_ratio(mass * gravity * std::pow(width, 3) / stiffness);
}

}  // namespace swale
