#include "solver/equilibrium/supports.h"

#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

#include <stdexcept>

using namespace swale;

namespace {

enum { x, y, z };

const Patch patch{CubicBasis({0, 1, 2, 3}), CubicBasis({0, 1})};

/// Fixed, tied to one, tied to a weighted sum with an offset, and tied to a tied one.
Supports mixed_supports() {
    Supports supports(patch.points());
    supports.fix({0, x}, 1.5);
    supports.tie({5, z}, {{{2, z}, 1}});
    supports.tie({1, y}, {{{9, y}, -0.5}, {{0, x}, 2}}, 0.25);
    supports.tie({3, x}, {{{1, y}, 3}, {{4, z}, 1}});
    supports.close();
    return supports;
}

Eigen::VectorXd some_unknowns(const Supports& supports) {
    return Eigen::VectorXd::LinSpaced(supports.unknowns(), -1, 7).array().sin();
}

}  // namespace

TEST_CASE("supports: fixed and tied components take their values") {
    const Supports supports = mixed_supports();
    CHECK(supports.unknowns() == 3 * patch.points() - 4);
    const ControlPoints points = supports.expand(some_unknowns(supports));
    CHECK(points(x, 0) == 1.5);
    CHECK(points(z, 5) == points(z, 2));
    CHECK(points(y, 1) == doctest::Approx(-0.5 * points(y, 9) + 2 * 1.5 + 0.25));
    CHECK(points(x, 3) == doctest::Approx(3 * points(y, 1) + points(z, 4)));
}

TEST_CASE("supports: restrict is the transpose of expand") {
    const Supports supports = mixed_supports();
    const Eigen::VectorXd q = some_unknowns(supports), none = Eigen::VectorXd::Zero(supports.unknowns());
    const ControlPoints gradient = term_checks::scatter(patch, 5), linear = supports.expand(q) - supports.expand(none);
    CHECK(q.dot(supports.restrict(gradient)) == doctest::Approx(linear.cwiseProduct(gradient).sum()).epsilon(1e-13));
}

TEST_CASE("supports: project takes back what expand gave") {
    const Supports supports = mixed_supports();
    const Eigen::VectorXd q = some_unknowns(supports);
    CHECK((supports.project(supports.expand(q)) - q).norm() == 0);
}

TEST_CASE("supports: unknowns are numbered along the belt") {
    Supports supports(patch.points());
    supports.close();
    for (int p = 0; p < patch.points(); ++p)
        for (int c = 0; c < 3; ++c) CHECK(supports.plain_unknown(p, c) == 3 * p + c);
}

TEST_CASE("supports: a component tied to one further along gets the number of its own place") {
    Supports supports(patch.points());
    supports.tie({1, x}, {{{patch.points() - 1, x}, 1}});
    supports.close();
    CHECK(supports.plain_unknown(1, x) == 3);
    CHECK(supports.plain_unknown(patch.points() - 1, x) == 3);
}

TEST_CASE("supports: the kind of a component is fixed or one unknown or combined") {
    const Supports supports = mixed_supports();
    CHECK(supports.plain_unknown(0, x) == Supports::fixed);
    CHECK(supports.plain_unknown(1, y) == Supports::combined);
    CHECK(supports.plain_unknown(5, z) == supports.plain_unknown(2, z));
}

TEST_CASE("supports: a circle of ties is refused") {
    Supports supports(patch.points());
    supports.tie({0, x}, {{{1, x}, 1}});
    supports.tie({1, x}, {{{0, x}, 1}});
    CHECK_THROWS_AS(supports.close(), std::logic_error);
}

TEST_CASE("supports: a run of unknowns ends before a fixed or tied component") {
    Supports supports(patch.points());
    supports.fix({2, y}, 0);
    supports.tie({4, x}, {{{3, x}, 1}});
    supports.close();
    CHECK(supports.consecutive(0) == 7);
    CHECK(supports.consecutive(2) == 1);
    CHECK(supports.consecutive(3) == 3);
    CHECK(supports.consecutive(4) == 1);
    CHECK(supports.consecutive(5) == 3 * (patch.points() - 5));
}
