#include "solver/stability/lowest_modes.h"

#include "solver/shell/shell_energy.h"

#include <doctest/doctest.h>
#include <Eigen/Eigenvalues>

#include <memory>

using namespace swale;

namespace {

enum { x, y, z };

const Patch patch{CubicBasis({0, 20, 40, 60, 80, 100}), CubicBasis({0, 10, 20})};

Section section() {
    Section section;
    section.membrane = orthotropic(900, 400, 100, 150);
    section.bending = orthotropic(600, 300, 80, 110);
    return section;
}

/// Held by both end sections; with a few ties, so that the area matrix sees them too.
System held_strip() {
    Supports supports(patch.points());
    const int last = patch.along.size() - 1;
    for (int j = 0; j < patch.across.size(); ++j)
        for (const int c : {x, y, z})
            for (const int i : {0, last}) supports.fix({patch.index(i, j), c}, 0);
    for (int j = 1; j < patch.across.size(); ++j)
        supports.tie({patch.index(last - 1, j), x}, {{{patch.index(last - 1, 0), x}, 0.9}});
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, section()));
    return system;
}

ControlPoints stretched(double stretch) {
    return patch.follow([&](double u, double v) { return Eigen::Vector3d(stretch * u, v, 0); });
}

Eigen::MatrixXd dense(const BandMatrix& band) {
    Eigen::MatrixXd matrix(band.size(), band.size());
    for (int i = 0; i < band.size(); ++i)
        for (int j = 0; j < band.size(); ++j) matrix(i, j) = band(i, j);
    return matrix;
}

void check_against_dense(const System& system, const ControlPoints& points) {
    const Eigen::MatrixXd K = dense(system.tangent(points)), M = dense(system.area_matrix());
    const Eigen::VectorXd values = Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd>(K, M).eigenvalues();
    const std::vector<EigenMode> modes = lowest_modes(system, points, 4);
    REQUIRE(modes.size() == 4);
    for (int k = 0; k < 4; ++k) {
        CHECK(modes[k].value == doctest::Approx(values[k]).epsilon(1e-6));
        const Eigen::VectorXd& shape = modes[k].shape;
        CHECK((K * shape - modes[k].value * (M * shape)).norm() < 1e-4 * values.cwiseAbs()[3] * (M * shape).norm());
    }
}

}  // namespace

TEST_CASE("lowest modes: under tension they are those of the dense eigenproblem") {
    check_against_dense(held_strip(), stretched(1.01));
}

TEST_CASE("lowest modes: under compression the negative ones are found too") {
    const System system = held_strip();
    CHECK(lowest_modes(system, stretched(0.98), 1).at(0).value < 0);
    check_against_dense(system, stretched(0.98));
}

TEST_CASE("lowest modes: the area matrix is the integral of the squared displacement of the unknowns") {
    const System system = held_strip();
    const Eigen::VectorXd q = Eigen::VectorXd::LinSpaced(system.unknowns(), 0, 40).array().sin();
    const ControlPoints displacement = system.supports().expand(q);
    double integral = 0;
    for (const LinePoint& along : gauss_rule(patch.along, 4).points)
        for (const LinePoint& across : gauss_rule(patch.across, 4).points)
            integral +=
                along.weight * across.weight * patch.jet(displacement, along.position, across.position).position.squaredNorm();
    Eigen::VectorXd product(system.unknowns());
    system.area_matrix().multiply(q.data(), product.data());
    CHECK(q.dot(product) == doctest::Approx(integral).epsilon(1e-12));
}
