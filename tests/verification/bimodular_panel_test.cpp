#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>

// A flat panel whose carcass is softer in compression, between two straight ends that are drawn apart and turned in the panel's
// plane, its sides free: a beam of two moduli. The strain e + k y is linear across whatever the law, so force and moment follow
// from the two triangles of tension and compression. Without a force: the reduced modulus 4 Et Ec/(sqrt Et + sqrt Ec)^2
// (Engesser and von Karman's double modulus; Timoshenko and Gere, Theory of Elastic Stability, section 3.3). With a force and
// nothing borne in compression: Stein and Hedgepeth, Analysis of partly wrinkled membranes, NASA TN D-813 (1961).

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double length = 800, width = 1000, A11 = 8000, A22 = 2500, A12 = 500;
constexpr double small = 1e-5;  // strain at the edges: rotations don't count

Section panel_section(double share) {
    Section section;
    section.membrane = orthotropic(A11, A22, A12, 500);
    section.bending = orthotropic(1, 1, 0, 0.5);  // takes no part
    section.compression = {share, 1e-5 * small * A11};
    return section;
}

// Per width, free to contract: A11 h = N, e22 = -A12/A22' N/A11 with A22' = A22 - A12^2/A11, e11 = h - A12/A11 e22.
double modulus(double share) {
    return 1 / (1 / (share * A11) + std::pow(A12 / A11, 2) / (A22 - A12 * A12 / A11));
}

struct EndForce {
    double force, moment;  // [N], [N mm]
};

// Two triangles: c wide in tension, d in compression, k c and k d their strains at the edges.
EndForce beam(double share, double strain, double curvature) {
    const double c = width / 2 + strain / curvature, d = width - c;
    const double pull = modulus(1) * curvature * c * c / 2, push = modulus(share) * curvature * d * d / 2;
    return {pull - push, pull * (width / 2 - c / 3) + push * (width / 2 - d / 3)};
}

Supports drawn_and_turned(const Patch& patch, double strain, double curvature) {
    const int last = patch.along.size() - 1, across = patch.across.size();
    Supports supports(patch.points());
    for (int p = 0; p < patch.points(); ++p) supports.fix({p, z}, 0);
    for (int j = 0; j < across; ++j) {
        const double from_middle = patch.across.greville()[j] - width / 2;
        supports.fix({patch.index(0, j), x}, 0);
        supports.fix({patch.index(last, j), x}, length * (1 + strain + curvature * from_middle));
    }
    supports.fix({patch.index(0, 0), y}, 0);
    supports.close();
    return supports;
}

EndForce panel(double share, double strain, double curvature) {
    const Patch patch{CubicBasis(equal_breaks(length, 4)), CubicBasis(equal_breaks(width, 40))};
    System system(patch, drawn_and_turned(patch, strain, curvature));
    system.add(std::make_shared<ShellEnergy>(patch, panel_section(share)));
    const ControlPoints forces = system.full_gradient(equilibrium(system, flat(patch)));
    EndForce end{};
    for (int j = 0; j < patch.across.size(); ++j) {
        const double pull = forces(x, patch.index(patch.along.size() - 1, j));
        end.force += pull;
        end.moment += pull * (patch.across.greville()[j] - width / 2);
    }
    return end;
}

Reference closed_form(double value, const char* unit, const std::string& source, double share, double tolerance,
                      const std::string& why) {
    return {value,     unit, source, Kind::closed_form, "compression bears " + std::to_string(share).substr(0, 5) + " of A11",
            tolerance, why};
}

constexpr const char* grid = "40 spans across, the corner of the force within one of them";

}  // namespace

TEST_CASE("a panel that is softer in compression bends in its plane as a beam of two moduli") {
    const double curvature = 2 * small / width;
    for (const double share : {1.0, 0.3, 0.1, 0.01}) {
        // No force: c^2 Et = d^2 Ec.
        const double root = std::sqrt(modulus(share) / modulus(1)), c = width * root / (1 + root);
        const double strain = curvature * (c - width / 2);
        const EndForce end = panel(share, strain, curvature);
        const double reduced = 4 * modulus(1) * modulus(share) / std::pow(std::sqrt(modulus(1)) + std::sqrt(modulus(share)), 2);
        check("moment over curvature without a force",
              closed_form(reduced * std::pow(width, 3) / 12, "N mm^2", "double modulus", share, 1e-3, grid),
              end.moment / curvature);
        CHECK(std::abs(end.force) < 2e-3 * end.moment / width);
    }
}

TEST_CASE("a drawn panel that is softer in compression bends as the two triangles of its force say") {
    const double curvature = 2 * small / width;
    for (const double share : {0.3, 0.1, 0.01})
        for (const double part : {0.25, 0.6}) {  // of the edges' strain
            const EndForce end = panel(share, part * small, curvature), two = beam(share, part * small, curvature);
            check("force", closed_form(two.force, "N", "two triangles", share, 1e-3, grid), end.force);
            check("moment", closed_form(two.moment, "N mm", "two triangles", share, 1e-3, grid), end.moment);
        }
}

TEST_CASE("a drawn panel that bears next to nothing in compression bends as a partly wrinkled membrane") {
    const double curvature = 2 * small / width, share = 0.001;
    for (const double part : {0.2, 0.5}) {
        const EndForce end = panel(share, part * small, curvature);
        // 2 M/(P b) = 1 - 2/3 sqrt(2 P/(E b^2 k)) once k > 2 P/(E b^2).
        const double P = end.force, wrinkled = 2 * P / (modulus(1) * width * width * curvature);
        CHECK(wrinkled < 1);
        check("2 M / (P b)",
              closed_form(1 - 2.0 / 3 * std::sqrt(wrinkled), "-", "Stein and Hedgepeth, NASA TN D-813 (1961)", share, 5e-3,
                          "a thousandth of A11 is left"),
              2 * end.moment / (P * width));
    }
}

TEST_CASE("a panel pressed along bears the share of its modulus and widens as before for its force") {
    const EndForce end = panel(0.1, -small, 1e-12);
    check("force", closed_form(-modulus(0.1) * small * width, "N", "uniaxial", 0.1, 1e-3, "1e-5 of the force is blend"),
          end.force);
}
