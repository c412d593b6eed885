#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <memory>

// Cantilever under a dead shear force at its end: L = 10, b = 1, h = 0.1, E = 1.2e6, nu = 0, P up to 4, all in one consistent
// set of units. Sze, Liu and Lo, Finite Elements in Analysis and Design 40 (2004) 1551, problem 3.1. Beside the published
// values, which are of a shear-flexible mesh, stand those of the extensible elastica with the shell's own energy, EA ((lambda^2
// - 1)/2)^2/2 + EI (lambda theta')^2/2, by own integration of its differential equation.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double length = 10, width = 1, thickness = 0.1, modulus = 1.2e6;

Reference elastica(const ReferenceTable& table, double value) {
    Reference reference =
        published(table, value, "nu = 0, clamped, dead end force, 40 spans", 1e-5, "digits of the table, 40 spans");
    reference.source = "extensible elastica with the shell's energy, own integration";
    reference.kind = Kind::other_method;
    return reference;
}

Reference mesh(const ReferenceTable& table, double value) {
    return published(table, value, "nu = 0, clamped, dead end force, 40 spans", 3e-3,
                     "three to four printed digits, shear-flexible mesh");
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

TEST_CASE("a cantilever under end shear follows the elastica and the published path") {
    const ReferenceTable table = reference_table("sze_3_1_cantilever_shear.csv");
    const std::vector<double> loads = table.numbers("P");
    const std::vector<double> back = table.numbers("minus_Utip_KL_SvK"), down = table.numbers("Wtip_KL_SvK");
    const std::vector<double> mesh_back = table.numbers("minus_Utip_sze"), mesh_down = table.numbers("Wtip_sze");
    const Patch patch = strip(equal_breaks(length, 40), width);
    std::vector<double> ours_back, ours_down;
    ControlPoints points = flat(patch);
    for (std::size_t k = 0; k < loads.size(); ++k) {
        points = bent_by(patch, loads[k], points);
        const Eigen::Vector3d tip = place(patch, points, length);
        ours_back.push_back(length - tip.x());
        ours_down.push_back(tip.z());
        if (k % 5 != 4) continue;
        const std::string at = ", P = " + std::to_string(static_cast<int>(loads[k]));
        check("tip moves back" + at, elastica(table, back[k]), ours_back[k]);
        check("tip moves down" + at, elastica(table, down[k]), ours_down[k]);
        check("tip moves back" + at, mesh(table, mesh_back[k]), ours_back[k]);
        check("tip moves down" + at, mesh(table, mesh_down[k]), ours_down[k]);
    }
    const auto both = [&](const std::string& name, const std::vector<double>& u, const std::vector<double>& w, bool known) {
        draw({"Cantilever under end shear", "back, " + name, "displacement of the tip", "P", pairs(u, loads), known});
        draw({"Cantilever under end shear", "down, " + name, "displacement of the tip", "P", pairs(w, loads), known});
    };
    both("swale", ours_back, ours_down, false);
    both("published", mesh_back, mesh_down, true);
}
