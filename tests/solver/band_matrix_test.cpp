#include "solver/equilibrium/band_matrix.h"

#include <doctest/doctest.h>
#include <Eigen/LU>

#include <cmath>
#include <stdexcept>

using namespace swale;

namespace {

constexpr int size = 17, half_bandwidth = 4;

/// Diagonally dominant with `pivot` on the diagonal of row 9.
BandMatrix band_with(double pivot) {
    BandMatrix band(size, half_bandwidth);
    for (int i = 0; i < size; ++i)
        for (int j = std::max(0, i - half_bandwidth); j <= i; ++j) band.add(i, j, i == j ? 9 : std::sin(3.0 * i + 5.0 * j));
    band.add(9, 9, pivot - 9);
    return band;
}

Eigen::MatrixXd dense(const BandMatrix& band) {
    Eigen::MatrixXd matrix(size, size);
    for (int i = 0; i < size; ++i)
        for (int j = 0; j < size; ++j) matrix(i, j) = band(i, j);
    return matrix;
}

const Eigen::VectorXd right = Eigen::VectorXd::LinSpaced(size, 1, 3).array().cos();

}  // namespace

TEST_CASE("band matrix: entries are symmetric and zero outside the band") {
    BandMatrix band(size, half_bandwidth);
    band.add(3, 6, 2.0);
    band.add(6, 3, 0.5);
    CHECK(band(3, 6) == 2.5);
    CHECK(band(6, 3) == 2.5);
    CHECK(band(0, 16) == 0);
}

TEST_CASE("band matrix: the product agrees with the dense one") {
    const BandMatrix band = band_with(9);
    Eigen::VectorXd product(size);
    band.multiply(right.data(), product.data());
    CHECK((product - dense(band) * right).norm() < 1e-14 * product.norm());
}

TEST_CASE("band matrix: reversed, its entries stand in opposite order") {
    BandMatrix band = band_with(9);
    band.reverse();
    CHECK(dense(band) == dense(band_with(9)).reverse());
}

TEST_CASE("band factor: a shorter right side is one of the leading part") {
    const BandFactor factor(band_with(9));
    const int part = size - 5;
    const Eigen::MatrixXd leading = dense(band_with(9)).topLeftCorner(part, part);
    CHECK((factor.solve(right.head(part)) - leading.partialPivLu().solve(right.head(part))).norm() < 1e-14);
    CHECK_THROWS_AS(factor.solve(Eigen::VectorXd::Ones(size + 1)), std::logic_error);
}

TEST_CASE("band factor: the solution agrees with the dense one") {
    const BandMatrix band = band_with(9);
    const BandFactor factor(band);
    REQUIRE(factor.ok());
    CHECK((factor.solve(right) - dense(band).partialPivLu().solve(right)).norm() < 1e-14);
}

TEST_CASE("band factor: an indefinite matrix is named with its row and not solved") {
    const BandFactor factor(band_with(-9));
    CHECK_FALSE(factor.ok());
    CHECK(factor.failed_row() == 9);
    CHECK_THROWS_AS(factor.solve(right), std::logic_error);
}
