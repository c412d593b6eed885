#include "solver/strain/line_force.h"

#include "mesh/quadrature.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace swale;

namespace {

const CubicBasis across({0, 10, 20, 60, 100});

// A line force at four Gauss points a span.
template <class Force>
LineForce sampled(const Force& force) {
    LineForce rows;
    for (const LinePoint& point : gauss_rule(across, 4).points) rows.emplace_back(point.position, force(point.position));
    return rows;
}

}  // namespace

TEST_CASE("line force: short spans keep every row") {
    const LineForce rows = sampled([](double y) { return y * y; });
    CHECK(resolved_line_force(rows, across, 40) == rows);
}

TEST_CASE("line force: a long span gives its mean at its middle") {
    // Mean of y^2 over [60, 100]: (100^3 - 60^3) / (3 * 40), a closed form.
    const LineForce resolved = resolved_line_force(sampled([](double y) { return y * y; }), across, 15);
    REQUIRE(resolved.size() == 10);
    CHECK(resolved.back().first == 80);
    CHECK(resolved.back().second == doctest::Approx((1e6 - 216e3) / 120).epsilon(1e-12));
    CHECK(resolved[7].first < 20);
}

TEST_CASE("line force: a swing within a long span leaves no trace") {
    // Third Legendre polynomial over [60, 100], no force in sum: what the pressure of an unresolved span looks like.
    const auto swing = [](double y) {
        const double t = (y - 80) / 20;
        return y > 60 ? 1 + 5 * (5 * t * t * t - 3 * t) / 2 : 1.0;
    };
    for (const auto& [y, force] : resolved_line_force(sampled(swing), across, 15)) CHECK(force == doctest::Approx(1));
}
