#include "io/chart/monotone_curve.h"

#include <cmath>
#include <stdexcept>
#include <utility>

namespace swale {

namespace {

// Between two pieces of widths h and secants d; zero where they turn.
double inner_slope(double h_before, double d_before, double h_behind, double d_behind) {
    if (d_before * d_behind <= 0) return 0;
    const double w_before = 2 * h_behind + h_before, w_behind = h_behind + 2 * h_before;
    return (w_before + w_behind) / (w_before / d_before + w_behind / d_behind);
}

// At an end: the parabola's slope, held to the side and to three times the steepness of the piece.
double end_slope(double h, double d, double h_next, double d_next) {
    const double slope = ((2 * h + h_next) * d - h * d_next) / (h + h_next);
    if (slope * d <= 0) return 0;
    return d * d_next < 0 && std::abs(slope) > std::abs(3 * d) ? 3 * d : slope;
}

}  // namespace

MonotoneCurve::MonotoneCurve(std::vector<double> x, std::vector<double> y) : x_(std::move(x)), y_(std::move(y)) {
    const std::size_t n = x_.size();
    if (n < 2 || y_.size() != n) throw std::logic_error("a curve needs two points and a value for each");
    std::vector<double> h, d;
    for (std::size_t k = 0; k + 1 < n; ++k) {
        h.push_back(x_[k + 1] - x_[k]);
        d.push_back((y_[k + 1] - y_[k]) / h[k]);
    }
    slope_.assign(n, d[0]);
    if (n == 2) return;
    slope_[0] = end_slope(h[0], d[0], h[1], d[1]);
    for (std::size_t k = 1; k + 1 < n; ++k) slope_[k] = inner_slope(h[k - 1], d[k - 1], h[k], d[k]);
    slope_[n - 1] = end_slope(h[n - 2], d[n - 2], h[n - 3], d[n - 3]);
}

// Hermite's cubic.
double MonotoneCurve::value(std::size_t piece, double at) const {
    const double h = x_[piece + 1] - x_[piece], t = (at - x_[piece]) / h, r = 1 - t;
    return r * r * (1 + 2 * t) * y_[piece] + t * t * (3 - 2 * t) * y_[piece + 1] +
           h * t * r * (r * slope_[piece] - t * slope_[piece + 1]);
}

}  // namespace swale
