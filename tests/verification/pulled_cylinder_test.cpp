#include "solver/transition/belt_model.h"
#include "tests/verification/curved_shell.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

// Open cylinder pulled apart by two opposite forces: R = 4.953, L = 10.35, h = 0.094, E = 10.5e6, nu = 0.3125, P up to 40000;
// both ends free. Sze, Liu and Lo, Finite Elements in Analysis and Design 40 (2004) 1551, problem 3.5. An octant with a quarter
// of the force: x from mid-length to the end, y from the load to a quarter of the circle. A is the loaded point, B and C are 90
// degrees away, B at mid-length and C at the end.
//
// Under the force a shear-flexible shell has a deflection of its own, P/(2 pi k G h) ln(a/r) with k = 5/6, endless for a point:
// a mesh cuts it off at about the size of its elements. The Kirchhoff-Love shell has none of it, so that the published
// displacement of A is larger than ours by a share proportional to the load.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double radius = 4.953, length = 10.35, thickness = 0.094, modulus = 10.5e6, poisson = 0.3125, full_load = 40000;
constexpr double quarter = radius * std::numbers::pi / 2;

PointLoadedShell octant(int spans_along, int spans_around) {
    const Patch patch = panel(length / 2, quarter, spans_along, spans_around);
    Supports supports(patch.points());
    mirror(supports, patch, Edge::begin, x);
    mirror(supports, patch, Edge::far, z);
    mirror(supports, patch, Edge::crown, y);
    const auto shell = std::make_shared<ShellEnergy>(patch, isotropic_section(modulus, poisson, thickness),
                                                     cylinder_curvature(radius), points_per_span);
    PointLoadedShell octant(patch, shell, supports, {0, z}, 0.25);
    octant.settings.step_cap = 0.5;
    octant.settings.iterations = 200;
    return octant;
}

/// Displacements of the table, all positive.
struct Displacements {
    double a, b, c;
};

Displacements displacements(const Patch& patch, const ControlPoints& moved) {
    return {moved(z, edge_point(patch, Edge::crown, 0)), -moved(y, edge_point(patch, Edge::far, 0)),
            -moved(y, edge_point(patch, Edge::far, patch.along.size() - 1))};
}

/// Deflection of a shear-flexible plate for each e-fold of the distance from a force P.
double shear_deflection(double load) {
    const double shear_modulus = modulus / (2 * (1 + poisson));
    return load / (2 * std::numbers::pi * 5 / 6 * shear_modulus * thickness);
}

void draw_curves(const std::string& name, const std::vector<double>& loads, const std::vector<Displacements>& moved,
                 bool known) {
    std::vector<double> a, b, c;
    for (const Displacements& each : moved) {
        a.push_back(each.a);
        b.push_back(each.b);
        c.push_back(each.c);
    }
    for (const auto& [point, values] : {std::pair{"A, outward", a}, std::pair{"B, inward", b}, std::pair{"C, inward", c}})
        draw({"Pull-out of an open cylinder", std::string(point) + ", " + name, "displacement", "P/Pmax", pairs(values, loads),
              known});
}

}  // namespace

TEST_CASE("an open cylinder pulled apart follows the published load path") {
    const ReferenceTable table = reference_table("sze_3_5_pullout_cylinder.csv");
    const std::vector<double> loads = table.numbers("P_over_Pmax");
    const std::vector<double> a = table.numbers("W_A"), b = table.numbers("minus_U_B"), c = table.numbers("minus_U_C");
    const PointLoadedShell shell = octant(24, 36);
    const ControlPoints rest = shell.at_rest(rolled_up(shell.patch(), radius));
    std::vector<Displacements> ours, theirs;
    ControlPoints points = rest;
    for (std::size_t k = 0; k < loads.size(); ++k) {
        points = shell.under(loads[k] * full_load, points).points;
        ours.push_back(displacements(shell.patch(), points - rest));
        theirs.push_back({a[k], b[k], c[k]});
        CAPTURE(loads[k]);
        if (loads[k] < 0.1 || k % 3 != 1) continue;
        const std::string at = ", P = " + std::to_string(static_cast<int>(loads[k] * full_load));
        const char* mesh = "shear-flexible mesh, three to four printed digits";
        check("inward at B" + at, published(table, b[k], "free ends, 24 x 36 spans an octant", 3e-3, mesh), ours[k].b);
        check("inward at C" + at, published(table, c[k], "free ends, 24 x 36 spans an octant", 5e-3, mesh), ours[k].c);
        check("outward at A" + at,
              published(table, a[k], "free ends, 24 x 36 spans an octant", 2e-2,
                        "shear deflection under the point load, in the table alone; proportional to the load"),
              ours[k].a);
        // It is some two e-folds at every load.
        const double folds = (a[k] - ours[k].a) / shear_deflection(loads[k] * full_load);
        CHECK(folds > 1.9);
        CHECK(folds < 2.6);
    }
    draw_curves("swale", loads, ours, false);
    draw_curves("published", loads, theirs, true);
}

TEST_CASE("the load on an open cylinder rises all along when the loaded point is drawn outwards") {
    const PointLoadedShell shell = octant(16, 24);
    const ControlPoints rest = shell.at_rest(rolled_up(shell.patch(), radius));
    LoadedState state{0, rest};
    for (double outward = 0.2; outward < 2.75; outward += 0.05) {
        const LoadedState next = shell.held_at(rest(z, 0) + outward, state.points);
        CAPTURE(outward);
        CHECK(next.load > state.load);
        state = next;
    }
    CHECK(state.load > full_load);
}
