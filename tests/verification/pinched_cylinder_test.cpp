#include "solver/transition/belt_model.h"
#include "tests/verification/convergence.h"
#include "tests/verification/curved_shell.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <numbers>
#include <string>
#include <vector>

// Cylinder on rigid diaphragms pinched by two opposite forces. An octant with a quarter of the force: x from mid-length to a
// diaphragm, where y and z are held and x is free, y from the load to a quarter of the circle.
//
// Linear: R = 300, L = 600, h = 3, E = 3e6, nu = 0.3, P = 1; MacNeal and Harder, Finite Elements in Analysis and Design 1
// (1985). The Kirchhoff-Love limit is 1.8282e-5. The classical 1.8248e-5 is a double Fourier series cut short; 1.8277e-5
// and 1.7933e-5 are the same series with the curvatures of Sanders and Koiter and of Donnell (linear_shells.csv).
//
// Nonlinear: R = 100, L = 200, h = 1, E = 30e3, nu = 0.3, P up to 12000; Sze, Liu and Lo, Finite Elements in Analysis and
// Design 40 (2004) 1551, problem 3.6. The ridge of the dent is narrow and wanders over the grid: too few spans around make it
// too stiff and the curve serrated. At 0.15 Pmax, where the curve is almost flat, 24, 36, 48 and 64
// spans a side give 32.9, 37.9, 40.9 and 42.0; the published 36.2 lies between our coarse grids. So loads are compared at the
// same displacement. The printed A has the shear deflection under the load in it, some 0.8 at full load (hinged_roof_test.cpp);
// by about as much our B is too far out at the printed A. The rules of 2 x 2 and 3 x 3 Gauss points differ by 5e-4 at full load
// on 24 x 48 spans.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

struct Cylinder {
    double radius, length, thickness, modulus;
};

constexpr double poisson = 0.3;
constexpr Cylinder linear{300, 600, 3, 3e6}, deep{100, 200, 1, 30e3};
constexpr double full_load = 12000;

PointLoadedShell octant(const Cylinder& cylinder, int spans_along, int spans_around, int gauss_points = points_per_span) {
    const Patch patch = panel(cylinder.length / 2, cylinder.radius * std::numbers::pi / 2, spans_along, spans_around);
    const ControlPoints start = rolled_up(patch, cylinder.radius);
    Supports supports(patch.points());
    mirror(supports, patch, Edge::begin, x);
    mirror(supports, patch, Edge::far, z);
    for (const int component : {y, z}) hold(supports, patch, Edge::end, component, start);
    mirror(supports, patch, Edge::crown, y);
    const auto shell = std::make_shared<ShellEnergy>(patch, isotropic_section(cylinder.modulus, poisson, cylinder.thickness),
                                                     cylinder_curvature(cylinder.radius), gauss_points);
    PointLoadedShell octant(patch, shell, supports, {0, z}, -0.25);
    octant.settings.step_cap = cylinder.radius / 10;
    octant.settings.iterations = 200;
    return octant;
}

double linear_deflection(int spans, int gauss_points) {
    const PointLoadedShell shell = octant(linear, spans, spans, gauss_points);
    const ControlPoints rest = shell.at_rest(rolled_up(shell.patch(), linear.radius));
    return -linear_displacements(shell.free_system(), rest, shell.unit_load())(z, 0);
}

/// Load over Pmax, displacements of the table: A under the load inwards, B 90 degrees away outwards.
struct DentPath {
    std::vector<double> loads, a, b;
};

/// The loaded point held at one displacement after the other.
DentPath dented(int spans_along, int spans_around, const std::vector<double>& inward) {
    const PointLoadedShell shell = octant(deep, spans_along, spans_around);
    const ControlPoints rest = shell.at_rest(rolled_up(shell.patch(), deep.radius));
    DentPath path;
    LoadedState state{0, rest};
    for (const double a : inward) {
        state = shell.held_at(rest(z, 0) - a, state.points);
        const int p = edge_point(shell.patch(), Edge::far, 0);
        path.loads.push_back(state.load / full_load);
        path.a.push_back(a);
        path.b.push_back(state.points(y, p) - rest(y, p));
    }
    return path;
}

void draw_path(const std::string& name, const DentPath& path, bool known) {
    const char* picture = "Pinched cylinder on diaphragms";
    draw({picture, "A, inward, " + name, "displacement", "P/Pmax", pairs(path.a, path.loads), known});
    draw({picture, "B, outward, " + name, "displacement", "P/Pmax", pairs(path.b, path.loads), known});
}

DentPath published_path() {
    const ReferenceTable table = reference_table("sze_3_6_pinched_cylinder.csv");
    return {table.numbers("P_over_Pmax"), table.numbers("minus_W_A"), table.numbers("U_B")};
}

void check_path(const DentPath& ours, const DentPath& table, const char* grid) {
    const ReferenceTable source = reference_table("sze_3_6_pinched_cylinder.csv");
    const char* why = "the published mesh is the stiffer one where the ridge is narrow; as printed, with its shear deflection";
    for (std::size_t k = 0; k < table.loads.size(); k += 3) {
        const std::string at = " with A at " + std::to_string(table.a[k]).substr(0, 5);
        Reference load = published(source, table.loads[k], grid, 6e-2, why);
        load.unit = "Pmax";
        check("load" + at, load, ours.loads[k]);
        if (table.a[k] > 60) check("outward at B" + at, published(source, table.b[k], grid, 4e-2, why), ours.b[k]);
    }
}

}  // namespace

TEST_CASE("the linear pinched cylinder converges to the Kirchhoff-Love value") {
    const LinearLimit limit = linear_limit("pinched cylinder", 2e-3, "error of the finest grid, falls with its square");
    for (const int gauss : {points_per_span, 3, 4}) {
        const Study grids = study(limit, gauss, {6, 12, 24, 48}, [&](int spans) { return linear_deflection(spans, gauss); });
        // Next to a point load w is of the kind r^2 ln r: order two for splines of any degree.
        CHECK(grids.order == doctest::Approx(2).epsilon(0.1));
        check(limit.quantity + ", extrapolated, " + std::to_string(gauss) + " Gauss points",
              {limit.value, "length", limit.source, Kind::other_method, "from 24 and 48 spans with order two", 5e-4,
               "what is left after the leading term"},
              extrapolated(grids, 2));
    }
}

TEST_CASE("a pinched cylinder on diaphragms dents as published") {
    const DentPath table = published_path();
    const DentPath ours = dented(12, 48, table.a);
    check_path(ours, table, "12 x 48 spans an octant");
    draw_path("12 x 48 spans", ours, false);
    draw_path("published", table, true);
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("a pinched cylinder on diaphragms dents as published on a fine grid") {
    const DentPath table = published_path();
    const DentPath ours = dented(20, 64, table.a);
    check_path(ours, table, "20 x 64 spans an octant");
    draw_path("20 x 64 spans", ours, false);
}
#endif
