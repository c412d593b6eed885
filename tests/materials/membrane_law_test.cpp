#include "materials/membrane_law.h"

#include <doctest/doctest.h>
#include <Eigen/Eigenvalues>

#include <cmath>
#include <vector>

using namespace swale;

namespace {

Section section_with(double share) {
    Section section;
    section.membrane << 9, 1.5, 0.6, 1.5, 2.5, -0.4, 0.6, -0.4, 0.8;
    section.compression = {share, 2.7};
    return section;
}

/// Strains of order one that look random, the same on every machine: in tension, in compression, and between.
std::vector<Eigen::Vector3d> strains() {
    std::vector<Eigen::Vector3d> some;
    for (int k = 1; k <= 60; ++k)
        some.push_back(0.6 * Eigen::Vector3d(std::sin(12.9 * k), std::sin(78.2 * k + 1), std::sin(37.7 * k + 2)));
    return some;
}

double force_of_linear_law(const Section& section, const Eigen::Vector3d& e) {
    return section.membrane.row(0).dot(e);
}

// Central difference without its h^2 error.
template <class Function>
auto derivative(const Function& f, double h) {
    return decltype(f(h))((8 * (f(h / 2) - f(-h / 2)) - (f(h) - f(-h))) / (6 * h));
}

}  // namespace

TEST_CASE("membrane law: the strains of these tests lie on all three pieces of the law") {
    int pieces[3] = {};
    for (const Eigen::Vector3d& e : strains()) {
        const double n = force_of_linear_law(section_with(0.1), e);
        ++pieces[n > 0 ? 0 : n > -2.7 ? 1 : 2];
    }
    for (const int count : pieces) CHECK(count > 5);
}

TEST_CASE("membrane law: at rest there is neither energy nor force") {
    CHECK(membrane_energy(section_with(0.1), Eigen::Vector3d::Zero()) == 0);
    CHECK(membrane_force(section_with(0.1), Eigen::Vector3d::Zero()).norm() == 0);
}

TEST_CASE("membrane law: the force is the derivative of the energy and the tangent that of the force") {
    const Section section = section_with(0.1);
    for (const Eigen::Vector3d& e : strains())
        for (int k = 0; k < 3; ++k) {
            const auto moved = [&](double s) { return Eigen::Vector3d(e + s * Eigen::Vector3d::Unit(k)); };
            const auto energy = [&](double s) { return membrane_energy(section, moved(s)); };
            const auto force = [&](double s) { return membrane_force(section, moved(s)); };
            CHECK(derivative(energy, 1e-4) == doctest::Approx(membrane_force(section, e)[k]).epsilon(1e-9));
            const Eigen::Vector3d slope = derivative(force, 1e-4);
            CHECK((slope - membrane_tangent(section, e).col(k)).norm() < 1e-9);
        }
}

TEST_CASE("membrane law: under tension along the belt it is the linear law to the last bit") {
    for (const Eigen::Vector3d& e : strains()) {
        if (force_of_linear_law(section_with(0.1), e) < 0) continue;
        CHECK(membrane_force(section_with(0.1), e) == membrane_force(section_with(1), e));
        CHECK(membrane_tangent(section_with(0.1), e) == section_with(1).membrane);
    }
}

TEST_CASE("membrane law: a share of one is the linear law and what differs grows with what is lost") {
    for (const Eigen::Vector3d& e : strains()) {
        const Eigen::Vector3d linear = section_with(1).membrane * e;
        CHECK((membrane_force(section_with(1), e) - linear).norm() < 1e-14);
        const Eigen::Vector3d little = membrane_force(section_with(0.999), e) - linear;
        const Eigen::Vector3d more = membrane_force(section_with(0.9), e) - linear;
        CHECK((100 * little - more).norm() <= 1e-12 * (1 + more.norm()));
    }
}

TEST_CASE("membrane law: it is convex for every share so that the tangent is positive definite") {
    for (const double share : {1e-3, 0.1, 0.7})
        for (const Eigen::Vector3d& e : strains()) {
            const Section section = section_with(share);
            const Eigen::Matrix3d tangent = membrane_tangent(section, e);
            // Never less than A with only the share of n left: A - (1 - s) a a^T / A11.
            const Eigen::Vector3d a = section.membrane.col(0);
            const Eigen::Matrix3d least = section.membrane - (1 - share) / section.membrane(0, 0) * a * a.transpose();
            const double lowest = Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(least).eigenvalues()(0);
            CHECK(lowest > 0);
            CHECK(Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(tangent).eigenvalues()(0) >= lowest * (1 - 1e-9));
            for (const Eigen::Vector3d& f : strains())
                CHECK((membrane_force(section, f) - membrane_force(section, e)).dot(f - e) >= 0);
        }
}

TEST_CASE("membrane law: force and tangent go through both ends of the blend without a jump") {
    const Section section = section_with(0.1);
    for (const double strain : {0.0, -section.compression.blend / section.membrane(0, 0)}) {
        const Eigen::Vector3d before(strain + 1e-9, 0, 0), behind(strain - 1e-9, 0, 0);
        CHECK((membrane_force(section, before) - membrane_force(section, behind)).norm() < 1e-7);
        CHECK((membrane_tangent(section, before) - membrane_tangent(section, behind)).norm() < 1e-7);
    }
}

TEST_CASE("membrane law: beyond the blend the share of A11 is left and half a blend of the force is kept") {
    const Section section = section_with(0.1);
    const Eigen::Vector3d pressed(-0.5, 0, 0);
    CHECK(membrane_tangent(section, pressed)(0, 0) == doctest::Approx(0.1 * 9));
    CHECK(membrane_force(section, pressed)[0] == doctest::Approx(0.1 * 9 * -0.5 - 0.9 * 2.7 / 2));
}
