#include "solver/strain/line_force.h"

#include "mesh/quadrature.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace swale;

namespace {

// A line force at four Gauss points a span.
template <class Force>
LineForce sampled(const CubicBasis& across, const Force& force) {
    LineForce rows;
    for (const LinePoint& point : gauss_rule(across, 4).points) rows.emplace_back(point.position, force(point.position));
    return rows;
}

// n equal spans over 0 to 60.
CubicBasis equal_spans(int n) {
    std::vector<double> breaks;
    for (int k = 0; k <= n; ++k) breaks.push_back(60.0 * k / n);
    return CubicBasis(breaks);
}

}  // namespace

TEST_CASE("line force: a constant one is its own peak whatever the spans") {
    const CubicBasis across({0, 10, 20, 60, 100});
    for (const double width : {1e-3, 7.0, 30.0, 200.0}) {
        const LineForcePeak peak = largest_line_force(sampled(across, [](double) { return 3.0; }), across, {15, width});
        CHECK(peak.force == doctest::Approx(3));
    }
}

TEST_CASE("line force: a smooth peak is found with its place") {
    // Mean of 1 - (y - 30)^2/900 over 24 mm about 30: 1 - 144/2700, a closed form.
    const CubicBasis across = equal_spans(24);
    const auto hill = [](double y) { return 1 - std::pow((y - 30) / 30, 2); };
    const LineForcePeak peak = largest_line_force(sampled(across, hill), across, {5, 24});
    CHECK(peak.force == doctest::Approx(1 - 144 / 2700.0).epsilon(1e-3));
    CHECK(peak.y == doctest::Approx(30).epsilon(0.02));
}

TEST_CASE("line force: a swing within a long span leaves no trace") {
    // Third Legendre polynomial over [60, 100], no force in sum: what the pressure of an unresolved span looks like.
    const CubicBasis across({0, 10, 20, 60, 100});
    const auto swing = [](double y) {
        const double t = (y - 80) / 20;
        return y > 60 ? 1 + 5 * (5 * t * t * t - 3 * t) / 2 : 1.0;
    };
    CHECK(largest_line_force(sampled(across, swing), across, {15, 7}).force == doctest::Approx(1));
    CHECK(largest_line_force(sampled(across, swing), across, {40, 7}).force > 2);
}

TEST_CASE("line force: that of an edge which alone is carried does not grow with the grid") {
    // 60 N on the last quadrature point, however short the spans: 10 N/mm over 6 mm, and the strip ends at the edge.
    for (const int spans : {2, 4, 8, 16}) {
        const CubicBasis across = equal_spans(spans);
        LineForce rows = sampled(across, [](double) { return 0.0; });
        rows.back().second = 60 / gauss_rule(across, 4).points.back().weight;
        const LineForcePeak peak = largest_line_force(rows, across, {30, 6});
        CHECK(peak.force == doctest::Approx(10));
        CHECK(peak.y == doctest::Approx(57));
    }
}
