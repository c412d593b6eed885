#include "solver/equilibrium/chain_stiffness.h"

#include <doctest/doctest.h>

#include <cmath>

namespace {

using namespace swale;
using Eigen::MatrixXd;

double in_series(double a, double b) {
    return a * b / (a + b);
}

// A bar along x: springs k from joint to joint, half way of each cell a spring c to the ground. Its mirror image turns x round.
HalfCell bar(double k, double c) {
    const MatrixXd one = MatrixXd::Ones(1, 1);
    return {k * one, in_series(k, c / 2) * one, -one};
}

}  // namespace

TEST_CASE("an endless chain is as stiff as one cell before an endless chain") {
    const double k = 7, c = 0.3, z = (*endless_chain_stiffness(bar(k, c)))(0, 0);
    CHECK(z == doctest::Approx(in_series(k, c + in_series(k, z))).epsilon(1e-12));
}

TEST_CASE("an endless chain that nothing holds gives way") {
    CHECK(std::abs((*endless_chain_stiffness(bar(7, 0)))(0, 0)) < 1e-12);
}

TEST_CASE("a chain that pushes itself away from its place has no stiffness") {
    CHECK_FALSE(endless_chain_stiffness(bar(7, -8)).has_value());
}
