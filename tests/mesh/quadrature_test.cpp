#include "mesh/quadrature.h"

#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

using namespace swale;

namespace {

const CubicBasis basis({-1, 0, 0.3, 2});

double integral_of_power(const LineRule& rule, int power) {
    double sum = 0;
    for (const LinePoint& point : rule.points) sum += point.weight * std::pow(point.position, power);
    return sum;
}

double exact_integral(int power) {
    return (std::pow(2, power + 1) - std::pow(-1, power + 1)) / (power + 1);
}

}  // namespace

TEST_CASE("Gauss rule: n points integrate powers up to 2n - 1 exactly and not the next") {
    for (int n = 1; n <= 8; ++n) {
        const LineRule rule = gauss_rule(basis, n);
        for (int power = 0; power < 2 * n; ++power)
            CHECK(integral_of_power(rule, power) == doctest::Approx(exact_integral(power)).epsilon(1e-12));
        CHECK(std::abs(integral_of_power(rule, 2 * n) / exact_integral(2 * n) - 1) > 1e-11);
    }
}

TEST_CASE("Gauss rule: points stand span by span in rising order with the basis of their place") {
    const LineRule rule = gauss_rule(basis, 3);
    REQUIRE(rule.points.size() == 9);
    for (int k = 0; k < 9; ++k) {
        const LinePoint& point = rule.points[k];
        CHECK(basis.span_of(point.position) == k / 3);
        CHECK(point.basis.first == k / 3);
        CHECK(point.basis.value == basis.at(point.position).value);
        if (k > 0) CHECK(point.position > rule.points[k - 1].position);
    }
}

TEST_CASE("Gauss rule: other numbers of points are refused") {
    CHECK_THROWS_AS(gauss_rule(basis, 0), std::logic_error);
    CHECK_THROWS_AS(gauss_rule(basis, 9), std::logic_error);
}
