#include "solver/shell/shell_energy.h"
#include "tests/verification/plate.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <string>

// A ribbon twisted to a helicoid r = ((1 + a) x, y cos tau x, y sin tau x): the wing of a belt in a transition. Green 1936;
// here for the shell's own law with nu = 0. Strains: e11 = a + a^2/2 + tau^2 y^2/2 and twist k12 = 2 (1 + a) tau / J with J^2 =
// (1 + a)^2 + tau^2 y^2; all others vanish.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 100, length = 400, thickness = 1, modulus = 1000;
constexpr double membrane = modulus * thickness, bending = membrane * thickness * thickness / 12;

/// A tension along the axis and a twist per length.
struct Load {
    double twist, tension;
};

/// Force and torque of a helicoid, the derivatives of its energy per length with respect to a and tau:
///   N = int A e11 (1 + a) + D66 k12 dk12/da dy,   M = int A e11 tau y^2 + D66 k12 dk12/dtau dy.
struct Helicoid {
    double twist, elongation;

    double strain(double at) const { return elongation + elongation * elongation / 2 + twist * twist * at * at / 2; }
    double force() const {
        return over_width([&](double at) {
            const double square = jacobian2(at);
            return membrane * strain(at) * stretch() +
                   2 * bending * twist * twist * stretch() * (square - stretch() * stretch()) / (square * square);
        });
    }
    double torque() const {
        return over_width([&](double at) {
            const double ratio = stretch() * stretch() / jacobian2(at);
            return membrane * strain(at) * twist * at * at + 2 * bending * twist * ratio * ratio;
        });
    }

  private:
    double stretch() const { return 1 + elongation; }
    double jacobian2(double at) const { return stretch() * stretch() + twist * twist * at * at; }
    template <class Function>
    static double over_width(const Function& f) {
        double sum = 0;
        for (const LinePoint& point : gauss_rule(CubicBasis({-width / 2, 0, width / 2}), 8).points)
            sum += point.weight * f(point.position);
        return sum;
    }
};

Helicoid helicoid_under(const Load& load) {
    Helicoid helicoid{load.twist, 0};
    for (int k = 0; k < 40; ++k) helicoid.elongation += (load.tension - helicoid.force()) / (membrane * width);
    return helicoid;
}

Patch ribbon() {
    CubicBasis across = CubicBasis(equal_breaks(width, 8));
    std::vector<double> breaks = across.breaks();
    for (double& place : breaks) place -= width / 2;
    return {CubicBasis(equal_breaks(length, 32)), CubicBasis(breaks)};
}

ControlPoints helicoid_surface(const Patch& patch, const Helicoid& helicoid) {
    return patch.follow([&](double s, double across) {
        return Eigen::Vector3d(s * (1 + helicoid.elongation), across * std::cos(helicoid.twist * s),
                               across * std::sin(helicoid.twist * s));
    });
}

/// Both end sections are straight lines, turned against each other; the far one moves along x as one. Slopes are free, as the
/// helicoid has no moment M11.
System twisted(const Patch& patch, const Load& load) {
    Supports supports(patch.points());
    const int last = patch.along.size() - 1;
    const double angle = load.twist * length;
    const std::vector<double> places = patch.across.greville();
    for (int j = 0; j < patch.across.size(); ++j) {
        for (const int c : {x, y, z}) supports.fix({patch.index(0, j), c}, c == y ? places[j] : 0);
        supports.fix({patch.index(last, j), y}, places[j] * std::cos(angle));
        supports.fix({patch.index(last, j), z}, places[j] * std::sin(angle));
        if (j > 0) supports.tie({patch.index(last, j), x}, {{{patch.index(last, 0), x}, 1}});
    }
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(membrane, bending)));
    system.add(std::make_shared<DeadLoad>(end_load(patch, {load.tension, 0, 0})));
    return system;
}

/// Moment of the reactions at the far section about the axis.
double torque_of(const System& system, const ControlPoints& points) {
    const ControlPoints forces = system.full_gradient(points);
    const Patch& patch = system.patch();
    double torque = 0;
    for (int j = 0; j < patch.across.size(); ++j) {
        const int p = patch.index(patch.along.size() - 1, j);
        torque += points(y, p) * forces(z, p) - points(z, p) * forces(y, p);
    }
    return torque;
}

Reference helicoid_value(double value, const char* unit, double tolerance) {
    return {value,
            unit,
            "helicoid with the shell's own law",
            Kind::closed_form,
            "nu = 0, axial force given",
            tolerance,
            "the transverse strain that the helicoid leaves out is some tau^2 w^2/8 of the axial one"};
}

}  // namespace

TEST_CASE("a twisted ribbon has the strain and torque of the helicoid") {
    const Patch patch = ribbon();
    for (const Load& load : {Load{0.001, 0}, Load{0.001, 500}, Load{0.002, 500}}) {
        CAPTURE(load.twist);
        CAPTURE(load.tension);
        const Helicoid helicoid = helicoid_under(load);
        const System system = twisted(patch, load);
        const ControlPoints points = equilibrium(system, helicoid_surface(patch, helicoid));
        const auto strain = [&](double across) { return (patch.jet(points, length / 2, across).along.squaredNorm() - 1) / 2; };
        check("strain at the centre", helicoid_value(helicoid.strain(0), "-", 1e-4), strain(0));
        check("strain at the edge +y", helicoid_value(helicoid.strain(width / 2), "-", 1e-4), strain(width / 2));
        check("strain at the edge -y", helicoid_value(helicoid.strain(-width / 2), "-", 1e-4), strain(-width / 2));
        check("torque", helicoid_value(helicoid.torque(), "N mm", 1e-4), torque_of(system, points));
    }
}

TEST_CASE("the centre line of a twisted ribbon goes slack at the twist of the helicoid") {
    // On a straight centre line, a = 0, the force is A tau^2 w^3/24 but for the twist's small share: tau w = sqrt(24 N/(A w)).
    const Patch patch = ribbon();
    for (const double tension : {200.0, 500.0}) {
        const double slack = std::sqrt(24 * tension / (membrane * width)) / width;
        const double found = crossing(
            [&](double twist) {
                const Load load{twist, tension};
                const Helicoid helicoid = helicoid_under(load);
                const ControlPoints points = equilibrium(twisted(patch, load), helicoid_surface(patch, helicoid));
                return (patch.jet(points, length / 2, 0).along.squaredNorm() - 1) / 2;
            },
            0.8 * slack, 1.1 * slack);
        check("twist at which the centre goes slack, N = " + std::to_string(static_cast<int>(tension)) + " N",
              helicoid_value(slack, "1/mm", 2e-4), found);
    }
}

TEST_CASE("the helicoid's force balance is the printed one of Green strain and second Piola stress") {
    const Helicoid helicoid = helicoid_under({0.001, 500});
    // N = (1 + a) (A w e0 + A tau^2 w^3/24) with the centre strain e0, but for the twist's small share.
    const double sum = membrane * width * (helicoid.strain(0) + 1e-6 * width * width / 24);
    CHECK((1 + helicoid.elongation) * sum == doctest::Approx(500).epsilon(1e-6));
    CHECK(helicoid.strain(0) == doctest::Approx(4.5607e-3).epsilon(1e-5));
}
