#include "solver/equilibrium/dead_load.h"

#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

using namespace swale;
using namespace swale::term_checks;

namespace {

const Patch patch{CubicBasis({0, 8, 12, 30}), CubicBasis({-10, 0, 6})};

}  // namespace

TEST_CASE("dead load: gradient is the derivative of the energy") {
    const DeadLoad load(scatter(patch, 3));
    CHECK(gradient_error(load, crumpled(patch, 1, 1), 0.1) < 1e-10);
    const ControlPoints gradient = gradient_of(load, crumpled(patch, 1, 1));
    CHECK(gradient == -load.forces());
}

TEST_CASE("dead load: the control points carry the whole area and its centroid") {
    const Eigen::VectorXd areas = control_areas(patch);
    CHECK(areas.sum() == doctest::Approx(30 * 16).epsilon(1e-14));
    const ControlPoints flat = patch.follow([](double x, double y) { return Eigen::Vector3d(x, y, 0); });
    CHECK((flat * areas / areas.sum() - Eigen::Vector3d(15, -2, 0)).norm() < 1e-12);
}

TEST_CASE("dead load: a uniform load works with the lift of the belt") {
    const DeadLoad weight = area_load(patch, {0, 0, -0.02});
    const ControlPoints flat = patch.follow([](double x, double y) { return Eigen::Vector3d(x, y, 5 + 0.1 * x); });
    CHECK(weight.energy(flat) == doctest::Approx(0.02 * 30 * 16 * (5 + 1.5)).epsilon(1e-13));
    CHECK(weight.forces().row(2).sum() == doctest::Approx(-0.02 * 30 * 16).epsilon(1e-13));
}
