#include "solver/equilibrium/system.h"

#include "solver/shell/shell_energy.h"
#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

#include <memory>

using namespace swale;
using namespace swale::term_checks;

namespace {

enum { x, y, z };

const Patch patch{CubicBasis({0, 8, 12, 30, 36}), CubicBasis({-10, 0, 6})};

std::shared_ptr<ShellEnergy> shell() {
    Section section;
    section.membrane = orthotropic(90, 40, 20, 25);
    section.bending = orthotropic(3000, 1800, 700, 900);
    return std::make_shared<ShellEnergy>(patch, section);
}

/// Plain ties, weighted ties, and ties of different components to one unknown, within one span and over it.
System tied_system() {
    Supports supports(patch.points());
    for (int j = 0; j < 3; ++j) supports.fix({j, z}, 0.5 * j);
    supports.tie({6, x}, {{{1, x}, 1}});
    supports.tie({7, y}, {{{1, x}, 1}});
    supports.tie({8, z}, {{{12, z}, 0.3}, {{9, y}, -0.7}, {{1, x}, 0.2}}, 1.0);
    supports.tie({20, x}, {{{21, x}, 1}});
    supports.tie({20, y}, {{{21, x}, -2}});
    supports.close();
    System system(patch, supports);
    system.add(shell());
    return system;
}

/// Three springs between far corners of the belt, each on a sum of all their components: 1/2 (w . x)^2.
class Coupling final : public Term {
  public:
    double energy(const ControlPoints& points) const override { return (weights() * gathered(points)).squaredNorm() / 2; }
    void add_gradient(const ControlPoints& points, ControlPoints& gradient) const override {
        const Eigen::VectorXd forces = weights().transpose() * weights() * gathered(points);
        for (int k = 0; k < 9; ++k) gradient(k % 3, nodes_[k / 3]) += forces[k];
    }
    void add_tangent(const ControlPoints&, TangentSink& sink) const override {
        // The upper triangle may hold anything.
        const Eigen::MatrixXd tangent = weights().transpose() * weights();
        Eigen::MatrixXd lower = Eigen::MatrixXd::Constant(9, 9, 1e300);
        lower.triangularView<Eigen::Lower>() = tangent;
        sink.add_block(nodes_, lower);
    }
    std::vector<int> coupled_points() const override { return nodes_; }

  private:
    static Eigen::MatrixXd weights() { return Eigen::VectorXd::LinSpaced(27, 1, 60).array().sin().matrix().reshaped(3, 9); }
    Eigen::VectorXd gathered(const ControlPoints& points) const { return points(Eigen::all, nodes_).reshaped(); }

    std::vector<int> nodes_{34, 1, 8};
};

Eigen::MatrixXd dense_product(const BandMatrix& band, const Eigen::VectorXd& direction) {
    Eigen::VectorXd product(band.size());
    band.multiply(direction.data(), product.data());
    return product;
}

}  // namespace

TEST_CASE("system: with all kinds of ties the tangent is the derivative of the residual") {
    const System system = tied_system();
    const Eigen::VectorXd q = system.supports().project(crumpled(patch, 1, 2));
    const auto residual = [&](const Eigen::VectorXd& at) {
        return system.supports().restrict(system.full_gradient(system.supports().expand(at)));
    };
    const BandMatrix tangent = system.tangent(system.supports().expand(q));
    for (int seed = 0; seed < 3; ++seed) {
        const Eigen::VectorXd d = Eigen::VectorXd::LinSpaced(q.size(), seed, 90 + seed).array().sin();
        const double h = 1e-2;
        const Eigen::VectorXd wide = (residual(q + h * d) - residual(q - h * d)) / (2 * h);
        const Eigen::VectorXd narrow = (residual(q + h / 2 * d) - residual(q - h / 2 * d)) / h;
        const Eigen::VectorXd change = (4 * narrow - wide) / 3;
        CHECK((dense_product(tangent, d) - change).norm() < 1e-8 * change.norm());
    }
}

TEST_CASE("system: a coupling of distant control points widens the band and its tangent is the derivative of its residual") {
    System system = tied_system();
    const ControlPoints points = crumpled(patch, 1, 2);
    const BandMatrix without = system.tangent(points);
    system.add(std::make_shared<Coupling>());
    const BandMatrix with = system.tangent(points);
    CHECK(with.half_bandwidth() > without.half_bandwidth());
    const Eigen::VectorXd q = system.supports().project(points);
    const Eigen::VectorXd d = Eigen::VectorXd::LinSpaced(q.size(), 0, 90).array().sin();
    const auto forces = [&](const Eigen::VectorXd& at) {
        return system.supports().restrict(gradient_of(Coupling(), system.supports().expand(at)));
    };
    const Eigen::VectorXd change = forces(q + d) - forces(q);
    CHECK((dense_product(with, d) - dense_product(without, d) - change).norm() < 1e-9 * change.norm());
}

TEST_CASE("system: the residual is the derivative of the energy of the unknowns") {
    const System system = tied_system();
    const Eigen::VectorXd q = system.supports().project(crumpled(patch, 1, 3));
    const Eigen::VectorXd residual = system.supports().restrict(system.full_gradient(system.supports().expand(q)));
    const Eigen::VectorXd d = Eigen::VectorXd::LinSpaced(q.size(), 0, 70).array().sin();
    const double h = 1e-2;
    const double wide = (system.energy(q + h * d) - system.energy(q - h * d)) / (2 * h);
    const double narrow = (system.energy(q + h / 2 * d) - system.energy(q - h / 2 * d)) / h;
    CHECK(residual.dot(d) == doctest::Approx((4 * narrow - wide) / 3).epsilon(1e-9));
}

TEST_CASE("system: without ties the band is as wide as a span reaches along") {
    Supports supports(patch.points());
    supports.close();
    const System system(patch, supports);
    // Three rows of control points and three more points, three components each.
    CHECK(system.tangent(ControlPoints::Zero(3, patch.points())).half_bandwidth() == 3 * (3 * patch.across.size() + 3) + 2);
}

TEST_CASE("system: a tie of the last section to one unknown does not widen the band") {
    Supports supports(patch.points());
    const int last = patch.along.size() - 1;
    for (int j = 1; j < patch.across.size(); ++j) supports.tie({patch.index(last, j), x}, {{{patch.index(last, 0), x}, 1}});
    supports.close();
    const System system(patch, supports);
    CHECK(system.tangent(ControlPoints::Zero(3, patch.points())).half_bandwidth() <= 3 * (3 * patch.across.size() + 3) + 2);
}

TEST_CASE("system: area matrix and lumped areas hold the area of the belt once for each component") {
    Supports supports(patch.points());
    supports.close();
    const System system(patch, supports);
    CHECK(system.areas().sum() == doctest::Approx(3 * 36 * 16).epsilon(1e-13));
    const Eigen::VectorXd ones = Eigen::VectorXd::Ones(system.unknowns());
    CHECK((dense_product(system.area_matrix(), ones) - system.areas()).norm() < 1e-11);
}

TEST_CASE("system: with ties the area matrix is the integral of the squared displacement") {
    const System system = tied_system();
    const Eigen::VectorXd q = Eigen::VectorXd::LinSpaced(system.unknowns(), 0, 40).array().sin();
    const Supports& supports = system.supports();
    const ControlPoints displacement = supports.expand(q) - supports.expand(Eigen::VectorXd::Zero(system.unknowns()));
    double integral = 0;
    for (const LinePoint& along : gauss_rule(patch.along, 4).points)
        for (const LinePoint& across : gauss_rule(patch.across, 4).points)
            integral +=
                along.weight * across.weight * patch.jet(displacement, along.position, across.position).position.squaredNorm();
    CHECK(q.dot(dense_product(system.area_matrix(), q).col(0)) == doctest::Approx(integral).epsilon(1e-12));
}
