#include "solver/shell/shell_point.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace swale;

namespace {

Section coupled_section() {
    Section section;
    section.membrane << 5, 1.2, 0.4, 1.2, 2.5, -0.3, 0.4, -0.3, 1.5;
    section.bending << 3, 0.7, -0.2, 0.7, 1.8, 0.3, -0.2, 0.3, 0.9;
    return section;
}

const Eigen::Vector3d natural(0.3, -0.2, 0.1);

/// A stretched, sheared and curved place with all its numbers of order one.
PointJet some_jet() {
    PointJet jet;
    jet << 1.1, 0.2, 0.5, -0.3, 0.4, -0.3, 0.9, 0.2, 0.6, -0.5, 0.4, 0.1, -0.7, 0.3, 0.8;
    return jet;
}

/// Roll of the given radius about the y axis, stretched along by `stretch`, seen at its lowest point.
PointJet cylinder_jet(double radius, double stretch) {
    PointJet jet = PointJet::Zero();
    jet.col(0) = Eigen::Vector3d(stretch, 0, 0);
    jet.col(1) = Eigen::Vector3d(0, 1, 0);
    jet.col(2) = Eigen::Vector3d(0, 0, stretch * stretch / radius);
    return jet;
}

PointJet stepped(int entry, double step) {
    PointJet jet = some_jet();
    jet.data()[entry] += step;
    return jet;
}

}  // namespace

TEST_CASE("shell point: each derivative of the energy agrees with its difference") {
    const PointJet gradient = point_gradient(some_jet(), coupled_section(), natural);
    const double h = 1e-3;
    const auto energy = [&](int k, double s) { return point_energy(stepped(k, s), coupled_section(), natural); };
    for (int k = 0; k < 15; ++k) {
        const double wide = (energy(k, h) - energy(k, -h)) / (2 * h), narrow = (energy(k, h / 2) - energy(k, -h / 2)) / h;
        CHECK(std::abs(gradient.data()[k] - (4 * narrow - wide) / 3) < 1e-9 * gradient.norm());
    }
}

TEST_CASE("shell point: each column of the tangent agrees with the difference of the gradient") {
    const PointTangent tangent = point_tangent(some_jet(), coupled_section(), natural);
    const double h = 1e-3;
    const auto gradient = [&](int k, double s) { return point_gradient(stepped(k, s), coupled_section(), natural); };
    for (int k = 0; k < 15; ++k) {
        const PointJet wide = (gradient(k, h) - gradient(k, -h)) / (2 * h),
                       narrow = (gradient(k, h / 2) - gradient(k, -h / 2)) / h;
        const PointJet column = (4 * narrow - wide) / 3;
        CHECK((tangent.col(k) - column.reshaped()).norm() < 1e-9 * tangent.norm());
    }
    CHECK((tangent - tangent.transpose()).norm() < 1e-14 * tangent.norm());
}

TEST_CASE("shell point: strain is Green-Lagrange and curvature is positive when the ends go up") {
    const PointStrain strain = point_strain(cylinder_jet(50, 1.1));
    CHECK(strain.membrane[0] == doctest::Approx((1.21 - 1) / 2));
    CHECK(std::abs(strain.membrane[1]) < 1e-15);
    CHECK(strain.curvature[0] == doctest::Approx(1.21 / 50));
    CHECK(strain.curvature[1] == 0);
}

TEST_CASE("shell point: shear and twist are doubled as in laminate theory") {
    PointJet jet = PointJet::Zero();
    jet.col(0) = Eigen::Vector3d(1, 0.02, 0);
    jet.col(1) = Eigen::Vector3d(0, 1, 0);
    jet.col(4) = Eigen::Vector3d(0, 0, 0.003);
    CHECK(point_strain(jet).membrane[2] == doctest::Approx(0.02));
    CHECK(point_strain(jet).curvature[2] == doctest::Approx(0.006));
}

TEST_CASE("shell point: a belt bent to its stress-free curvature has no moment") {
    const PointJet jet = cylinder_jet(50, 1);
    const PointForce force = point_force(coupled_section(), point_strain(jet), {1.0 / 50, 0, 0});
    CHECK(force.moment.norm() < 1e-15);
    CHECK(force.force.norm() < 1e-15);
}
