#include "solver/shell/shell_point.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace swale;

namespace {

Section coupled_section() {
    Section section;
    section.membrane << 5, 1.2, 0.4, 1.2, 2.5, -0.3, 0.4, -0.3, 1.5;
    section.bending << 3, 0.7, -0.2, 0.7, 1.8, 0.3, -0.2, 0.3, 0.9;
    return section;
}

/// The same carcass softer in compression; a `blend` of the forces' size puts `pressed_jet` within it or below it.
Section softening_section(double blend) {
    Section section = coupled_section();
    section.compression = {0.1, blend};
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

PointJet pressed_jet() {
    PointJet jet = some_jet();
    jet.col(0) *= 0.6;
    return jet;
}

PointJet stepped(PointJet jet, int entry, double step) {
    jet.data()[entry] += step;
    return jet;
}

/// Largest difference of the gradient from the energy's slopes, of the tangent from the gradient's, relative.
struct Errors {
    double gradient = 0, tangent = 0;
};

Errors derivative_errors(const PointJet& at, const Section& section) {
    const PointJet gradient = point_gradient(at, section, natural);
    const PointTangent tangent = point_tangent(at, section, natural);
    const double h = 1e-3;
    Errors worst;
    for (int k = 0; k < 15; ++k) {
        const auto energy = [&](double s) { return point_energy(stepped(at, k, s), section, natural); };
        const auto slope = [&](double s) { return point_gradient(stepped(at, k, s), section, natural); };
        const double wide = (energy(h) - energy(-h)) / (2 * h), narrow = (energy(h / 2) - energy(-h / 2)) / h;
        worst.gradient = std::max(worst.gradient, std::abs(gradient.data()[k] - (4 * narrow - wide) / 3) / gradient.norm());
        const PointJet wide_column = (slope(h) - slope(-h)) / (2 * h), narrow_column = (slope(h / 2) - slope(-h / 2)) / h;
        const PointJet column = (4 * narrow_column - wide_column) / 3;
        worst.tangent = std::max(worst.tangent, (tangent.col(k) - column.reshaped()).norm() / tangent.norm());
    }
    return worst;
}

}  // namespace

TEST_CASE("shell point: gradient and tangent agree with the differences of energy and gradient") {
    const Errors errors = derivative_errors(some_jet(), coupled_section());
    CHECK(errors.gradient < 1e-9);
    CHECK(errors.tangent < 1e-9);
    const PointTangent tangent = point_tangent(some_jet(), coupled_section(), natural);
    CHECK((tangent - tangent.transpose()).norm() < 1e-14 * tangent.norm());
}

TEST_CASE("shell point: the same holds where the carcass softens in compression and within the blend") {
    CHECK(point_strain(pressed_jet()).membrane[0] < -0.1);
    for (const double blend : {0.05, 5.0}) {
        const Errors errors = derivative_errors(pressed_jet(), softening_section(blend));
        CHECK(errors.gradient < 1e-9);
        CHECK(errors.tangent < 1e-9);
    }
}

TEST_CASE("shell point: in compression the force is that of the section's membrane law") {
    const PointStrain strain = point_strain(pressed_jet());
    const PointForce soft = point_force(softening_section(0.05), strain, natural);
    const PointForce stiff = point_force(coupled_section(), strain, natural);
    CHECK(soft.force[0] < 0);
    CHECK(std::abs(soft.force[0]) < 0.2 * std::abs(stiff.force[0]));
    CHECK(soft.moment == stiff.moment);
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
