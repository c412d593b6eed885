#include "mesh/cubic_basis.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>
#include <stdexcept>

using namespace swale;

namespace {

/// Neighbouring spans differ up to eightfold.
const CubicBasis graded({-3, -2, 0, 0.5, 4.5, 5, 12});

std::vector<double> places_in(const CubicBasis& basis) {
    std::vector<double> places;
    for (int k = 0; k <= 60; ++k) places.push_back(basis.begin() + (basis.end() - basis.begin()) * k / 60);
    return places;
}

double sum(const std::array<double, 4>& four) {
    return std::accumulate(four.begin(), four.end(), 0.0);
}

double curve_at(const CubicBasis& basis, const Eigen::VectorXd& control, double x) {
    const BasisValues values = basis.at(x);
    double sum = 0;
    for (int a = 0; a < 4; ++a) sum += values.value[a] * control[values.first + a];
    return sum;
}

}  // namespace

TEST_CASE("cubic basis: the splines sum to one and their derivatives to zero") {
    for (const double x : places_in(graded)) {
        const BasisValues values = graded.at(x);
        CHECK(sum(values.value) == doctest::Approx(1).epsilon(1e-14));
        CHECK(std::abs(sum(values.slope)) < 1e-13);
        CHECK(std::abs(sum(values.curvature)) < 1e-12);
        for (const double value : values.value) CHECK(value >= 0);
    }
}

TEST_CASE("cubic basis: slope and curvature are the derivatives of the value") {
    const double h = 1e-3;
    for (int s = 0; s < graded.spans(); ++s) {
        const double x = 0.3 * graded.breaks()[s] + 0.7 * graded.breaks()[s + 1];
        const BasisValues before = graded.at(x - h, s), here = graded.at(x, s), behind = graded.at(x + h, s);
        for (int a = 0; a < 4; ++a) {
            // Exact on a cubic: the second difference, and the first less h^2/6 times the third derivative.
            const double third = (behind.curvature[a] - before.curvature[a]) / (2 * h);
            const double slope = (behind.value[a] - before.value[a]) / (2 * h) - h * h / 6 * third;
            const double curvature = (behind.value[a] - 2 * here.value[a] + before.value[a]) / (h * h);
            CHECK(here.slope[a] == doctest::Approx(slope).epsilon(1e-10));
            CHECK(std::abs(here.curvature[a] - curvature) < 1e-8);
        }
    }
}

TEST_CASE("cubic basis: value, slope and curvature run on over a break") {
    for (int s = 1; s < graded.spans(); ++s) {
        const double x = graded.breaks()[s];
        const BasisValues left = graded.at(x, s - 1), right = graded.at(x, s);
        CHECK(right.first == left.first + 1);
        for (int a = 0; a < 3; ++a) {
            CHECK(left.value[a + 1] == doctest::Approx(right.value[a]).epsilon(1e-13));
            CHECK(left.slope[a + 1] == doctest::Approx(right.slope[a]).epsilon(1e-12));
            CHECK(left.curvature[a + 1] == doctest::Approx(right.curvature[a]).epsilon(1e-12));
        }
        CHECK(std::abs(left.curvature[0]) < 1e-13);
        CHECK(std::abs(right.curvature[3]) < 1e-13);
    }
}

TEST_CASE("cubic basis: control values at the Greville places reproduce a linear function") {
    const std::vector<double> places = graded.greville();
    const Eigen::VectorXd control = Eigen::Map<const Eigen::VectorXd>(places.data(), graded.size());
    for (const double x : places_in(graded)) CHECK(curve_at(graded, control, x) == doctest::Approx(x).epsilon(1e-14));
}

TEST_CASE("cubic basis: a break belongs to the span on its right and the end to the last span") {
    CHECK(graded.span_of(-3) == 0);
    CHECK(graded.span_of(0.5) == 3);
    CHECK(graded.span_of(12) == graded.spans() - 1);
}

TEST_CASE("cubic basis: inserted knots leave the curve unchanged") {
    const CubicBasis uneven({-3, -2.9, -2, 0, 0.25, 0.5, 4.5, 5, 6, 7, 12});
    for (const CubicBasis& fine : {graded.halved(), uneven, graded}) {
        const Eigen::VectorXd control = Eigen::VectorXd::LinSpaced(graded.size(), 0, 9).array().sin();
        const Eigen::VectorXd finer = graded.refinement(fine) * control;
        for (const double x : places_in(graded))
            CHECK(curve_at(fine, finer, x) == doctest::Approx(curve_at(graded, control, x)).epsilon(1e-13));
    }
}

TEST_CASE("cubic basis: refinement to knots that lack one of the coarse basis is refused") {
    CHECK_THROWS_AS(graded.refinement(CubicBasis({-3, 0, 12})), std::logic_error);
}

TEST_CASE("cubic basis: breaks that do not increase are refused") {
    CHECK_THROWS_AS(CubicBasis({0, 1, 1}), std::logic_error);
    CHECK_THROWS_AS(CubicBasis({0}), std::logic_error);
}

TEST_CASE("cubic basis: a scaled basis has the same values at scaled places") {
    const CubicBasis longer = graded.scaled(1.25);
    CHECK(longer.end() == 15);
    CHECK(longer.at(2.5).value[1] == doctest::Approx(graded.at(2).value[1]).epsilon(1e-14));
    CHECK(longer.at(2.5).slope[1] == doctest::Approx(graded.at(2).slope[1] / 1.25).epsilon(1e-14));
}
