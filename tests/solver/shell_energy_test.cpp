#include "solver/shell/shell_energy.h"

#include "tests/solver/plain_shell.h"
#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

using namespace swale;
using namespace swale::term_checks;

namespace {

const Patch patch{CubicBasis({0, 8, 12, 30}), CubicBasis({-10, 0, 6})};

/// Every constant in play. On spans of some 10 mm membrane and bending weigh alike, so that no error hides behind the other.
Section coupled_section() {
    Section section;
    section.membrane << 90, 21, 7, 21, 40, -5, 7, -5, 25;
    section.bending << 3000, 700, -250, 700, 1800, 320, -250, 320, 900;
    return section;
}

/// Forces and blend of one size, so that points lie on all pieces of the law.
Section softening_section() {
    Section section = coupled_section();
    section.compression = {0.1, 5};
    return section;
}

Eigen::Vector3d some_curvature(double x, double y) {
    return {0.01 + 1e-4 * x, -0.02, 3e-4 * y};
}

ControlPoints flat() {
    return patch.follow([](double x, double y) { return Eigen::Vector3d(x, y, 0); });
}

const ShellEnergy shell(patch, coupled_section());
const ShellEnergy precurved(patch, coupled_section(), some_curvature);

}  // namespace

TEST_CASE("shell: gradient is the derivative of the energy on random states") {
    for (unsigned seed = 0; seed < 4; ++seed)
        for (const ShellEnergy* term : {&shell, &precurved})
            CHECK(gradient_error(*term, crumpled(patch, 1.5, seed), 0.02) < 1e-9);
}

TEST_CASE("shell: tangent is the derivative of the gradient on random states") {
    for (unsigned seed = 0; seed < 4; ++seed)
        for (const ShellEnergy* term : {&shell, &precurved}) {
            CHECK(tangent_error(*term, crumpled(patch, 1.5, seed), 0.02) < 1e-9);
        }
}

TEST_CASE("shell: gradient and tangent are the derivatives where the carcass softens in compression too") {
    // The tangent has kinks at both ends of the blend, so differences are taken over steps that seldom meet one: rounding is
    // what they show.
    const ShellEnergy term(patch, softening_section(), some_curvature);
    for (unsigned seed = 0; seed < 4; ++seed) {
        CHECK(gradient_error(term, crumpled(patch, 1.5, seed), 1e-4) < 1e-8);
        CHECK(tangent_error(term, crumpled(patch, 1.5, seed), 1e-4) < 1e-7);
    }
}

TEST_CASE("shell: flat and unstretched it has neither energy nor forces and a tangent that is the derivative") {
    CHECK(std::abs(shell.energy(flat())) < 1e-24);
    CHECK(gradient_of(shell, flat()).norm() < 1e-11);
    CHECK(tangent_error(shell, flat(), 0.05) < 1e-9);
}

TEST_CASE("shell: a rigid motion costs nothing however large the rotation") {
    CHECK(std::abs(shell.energy(moved(large_motion(), flat()))) < 1e-20);
    for (const ShellEnergy* term : {&shell, &precurved}) {
        const ControlPoints points = crumpled(patch, 1.5, 7);
        CHECK(term->energy(moved(large_motion(), points)) == doctest::Approx(term->energy(points)).epsilon(1e-12));
    }
}

TEST_CASE("shell: its forces turn with the body and have neither resultant nor moment") {
    const ControlPoints points = crumpled(patch, 1.5, 7), forces = gradient_of(precurved, points);
    const ControlPoints turned = gradient_of(precurved, moved(large_motion(), points));
    CHECK((turned - large_motion().linear() * forces).norm() < 1e-11 * forces.norm());
    CHECK(forces.rowwise().sum().norm() < 1e-11 * forces.norm());
    Eigen::Vector3d moment = Eigen::Vector3d::Zero();
    for (int k = 0; k < patch.points(); ++k) moment += Eigen::Vector3d(points.col(k)).cross(Eigen::Vector3d(forces.col(k)));
    CHECK(moment.norm() < 1e-11 * forces.norm() * points.norm());
}

TEST_CASE("shell: a flat belt with stress-free curvature holds half of k0 D k0 per area") {
    const Eigen::Vector3d k0(0.01, -0.02, 0.005);
    const ShellEnergy term(patch, coupled_section(), [&](double, double) { return k0; });
    CHECK(term.energy(flat()) == doctest::Approx(30 * 16 * k0.dot(coupled_section().bending * k0) / 2).epsilon(1e-12));
}

TEST_CASE("shell: more Gauss points than three change the energy of a smooth state by less than 1e-4") {
    const ControlPoints points = crumpled(patch, 0, 0);
    const double three = shell.energy(points), five = ShellEnergy(patch, coupled_section(), {}, 5).energy(points);
    CHECK(three == doctest::Approx(five).epsilon(1e-4));
}

TEST_CASE("shell: four spans at once are what its plain twin gives span by span") {
    for (const Section& section : {coupled_section(), softening_section()})
        for (const int gauss_points : {1, 2, 3, 5}) {
            const ShellEnergy fast(patch, section, some_curvature, gauss_points);
            const PlainShell plain(patch, section, some_curvature, gauss_points);
            for (unsigned seed = 0; seed < 4; ++seed) {
                const ControlPoints points = crumpled(patch, 1.5, seed), forces = gradient_of(plain, points);
                const Eigen::MatrixXd tangent = dense_tangent(plain, points);
                CHECK(fast.energy(points) == doctest::Approx(plain.energy(points)).epsilon(1e-12));
                CHECK((gradient_of(fast, points) - forces).norm() < 1e-12 * forces.norm());
                CHECK((dense_tangent(fast, points) - tangent).norm() < 1e-12 * tangent.norm());
            }
        }
}
