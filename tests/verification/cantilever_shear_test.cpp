#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <memory>

// Cantilever under a dead shear force at its end: L = 10, b = 1, h = 0.1, E = 1.2e6, nu = 0, P up to 4, all in one consistent
// set of units. Sze, Liu and Lo, Finite Elements in Analysis and Design 40 (2004) 1551, problem 3.1.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double length = 10, width = 1, thickness = 0.1, modulus = 1.2e6;

/// Tip displacement of the extensible elastica with the energy EA ((lambda^2 - 1)/2)^2/2 + EI (lambda theta')^2/2, own
/// integration of its differential equation. The paper's own values (1.604, 4.933 and 3.286, 6.698) are of a shear-flexible
/// mesh.
struct Tip {
    double load, back, down;
};
constexpr Tip tips[] = {{1.0, 0.564339, 3.017231}, {2.0, 1.606460, 4.934669}, {4.0, 3.289544, 6.699889}};

Reference elastica(double value) {
    return {value,
            "length",
            "elastica with the same energy, own integration",
            Kind::other_method,
            "nu = 0, clamped, dead end force",
            1e-5,
            "six to seven digits of the table, 40 spans"};
}

ControlPoints bent_by(const Patch& patch, double load, const ControlPoints& start) {
    Supports supports(patch.points());
    clamp_begin(supports, patch);
    supports.close();
    System system(patch, supports);
    const double bending = modulus * thickness * thickness * thickness / 12;
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(modulus * thickness, bending)));
    system.add(std::make_shared<DeadLoad>(end_load(patch, {0, 0, load})));
    NewtonSettings settings;
    settings.step_cap = 1;
    return equilibrium(system, start, settings);
}

}  // namespace

TEST_CASE("a cantilever under end shear goes where the elastica goes") {
    const Patch patch = strip(equal_breaks(length, 40), width);
    ControlPoints points = flat(patch);
    for (const auto& [load, back, down] : tips) {
        points = bent_by(patch, load, points);
        const Eigen::Vector3d tip = place(patch, points, length);
        check("tip moves back", elastica(back), length - tip.x());
        check("tip moves down", elastica(down), tip.z());
    }
}

TEST_CASE("a cantilever under end shear agrees with the published table within its shear flexibility") {
    const Patch patch = strip(equal_breaks(length, 20), width);
    const Eigen::Vector3d tip = place(patch, bent_by(patch, 4, flat(patch)), length);
    const char* source = "Sze, Liu, Lo 2004, table of problem 3.1 at P = 4";
    const char* why = "four printed digits, 16 shear-flexible elements";
    check("tip moves back", {3.286, "length", source, Kind::published_table, "nu = 0", 2e-3, why}, length - tip.x());
    check("tip moves down", {6.698, "length", source, Kind::published_table, "nu = 0", 1e-3, why}, tip.z());
}
