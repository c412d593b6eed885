#include "benchmarks/published/held_belt.h"
#include "mesh/belt_grid.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/transition/belt_model.h"
#include "solver/transition/start_surface.h"
#include "tests/verification/convergence.h"
#include "tests/verification/curved_shell.h"
#include "tests/verification/end_moment.h"
#include "tests/verification/line_rules.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>
#include <string>
#include <vector>

// How exact the shell is with the rule of the whole patch and with Gauss points: at large displacement, on linear shells, on a
// transition with graded knots.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double pi = std::numbers::pi;

/// The breaks of a graded basis over another length.
std::vector<double> shrunk(const CubicBasis& basis, double length) {
    std::vector<double> breaks;
    for (const double at : basis.breaks()) breaks.push_back(length * (at - basis.begin()) / (basis.end() - basis.begin()));
    return breaks;
}

// --- large displacement: the cantilever of rolled_strip_test.cpp

constexpr double length = 12, membrane = 1.2e5, bending = 100, full_circle = 50 * pi / 3;

/// D lambda^2 theta' = M, A (lambda^2 - 1)/2 + D theta'^2 = 0: the circle of the shell's own law.
struct Circle {
    double stretch = 1, turning = 0;

    explicit Circle(double moment) {
        for (int k = 0; k < 30; ++k) {
            turning = moment / (bending * stretch * stretch);
            stretch = std::sqrt(1 - 2 * bending / membrane * turning * turning);
        }
    }
    Eigen::Vector3d at(double u, double v) const {
        const double radius = stretch / turning;
        return {radius * std::sin(turning * u), v, radius * (1 - std::cos(turning * u))};
    }
};

System cantilever(const Rule& rule, const Patch& patch, double moment) {
    Supports supports(patch.points());
    clamp_begin(supports, patch);
    keep_plane(supports, patch);
    supports.close();
    System system(patch, supports);
    system.add(rule.shell(patch, strip_section(membrane, bending), no_curvature));
    system.add(std::make_shared<EndMoment>(patch, moment, Circle(moment).turning * length));
    return system;
}

ControlPoints on_circle(const Patch& patch, double moment) {
    return patch.interpolate([circle = Circle(moment)](double u, double v) { return circle.at(u, v); });
}

/// Where the tip goes, three spans across.
Eigen::Vector3d rolled_tip(const Rule& rule, const std::vector<double>& breaks, double moment) {
    const Patch patch{CubicBasis(breaks), CubicBasis(equal_breaks(1, 3))};
    NewtonSettings settings;
    settings.step_cap = 0.5;
    settings.iterations = 200;
    settings.tolerance = 1e-11;
    return place(patch, equilibrium(cantilever(rule, patch, moment), on_circle(patch, moment), settings), length);
}

double tip_error(const Rule& rule, const std::vector<double>& breaks, double moment) {
    return (rolled_tip(rule, breaks, moment) - Circle(moment).at(length, 0.5)).norm();
}

// --- linear shells: those of scordelis_lo_roof_test.cpp and pinched_cylinder_test.cpp

double roof_deflection(const Rule& rule, const Patch& patch) {
    constexpr double radius = 25, weight = 90;
    const ControlPoints start = rolled_up(patch, radius);
    Supports supports(patch.points());
    mirror(supports, patch, Edge::begin, x);
    mirror(supports, patch, Edge::crown, y);
    for (const int component : {y, z}) hold(supports, patch, Edge::end, component, start);
    supports.close();
    System system(patch, supports);
    system.add(rule.shell(patch, isotropic_section(4.32e8, 0, 0.25), cylinder_curvature(radius)));
    const ControlPoints rest = supports.expand(minimise(system, supports.project(start), {}).q);
    const Eigen::VectorXd load = supports.restrict(area_load(patch, {0, 0, -weight}).forces());
    return -linear_displacements(system, rest, load)(z, edge_point(patch, Edge::far, 0));
}

double pinched_deflection(const Rule& rule, const Patch& patch) {
    constexpr double radius = 300;
    const ControlPoints start = rolled_up(patch, radius);
    Supports supports(patch.points());
    mirror(supports, patch, Edge::begin, x);
    mirror(supports, patch, Edge::far, z);
    for (const int component : {y, z}) hold(supports, patch, Edge::end, component, start);
    mirror(supports, patch, Edge::crown, y);
    const auto term = rule.shell(patch, isotropic_section(3e6, 0.3, 3), cylinder_curvature(radius));
    PointLoadedShell shell(patch, term, supports, {0, z}, -0.25);
    shell.settings.step_cap = radius / 10;
    return -linear_displacements(shell.free_system(), shell.at_rest(start), shell.unit_load())(z, 0);
}

using Deflection = double (*)(const Rule&, const Patch&);

/// Grids of odd numbers of spans, on which the rule has a point less; the errors in the picture of the Gauss rules.
std::vector<double> errors_of_patch_rule(const LinearLimit& limit, const Deflection& deflection, double side, double arc) {
    std::vector<double> errors, sizes;
    double finest = 0;
    for (const int n : {5, 9, 17, 25}) {
        finest = deflection(of_patch(), panel(side, arc, n, n));
        sizes.push_back(1.0 / n);
        errors.push_back(off(finest, limit.value));
    }
    check(limit.quantity + ", " + of_patch().name,
          {limit.value, "length", limit.source, Kind::other_method, "25 x 25 spans", limit.tolerance, limit.why}, finest);
    draw({limit.problem + ", error of the grid", of_patch().name, "span/side", "relative error", pairs(sizes, errors), false,
          true});
    return errors;
}

// --- a transition on graded knots: the strip of held_strip_test.cpp

constexpr double drawn_by = 6;

struct Held {
    Patch patch;
    ControlPoints points;
    double force;

    double edge_strain(double at) const { return patch.jet(points, at, 600).along.norm() - 1; }
};

Held held(double grid, const std::function<std::shared_ptr<const Term>(const BeltModel&)>& shell) {
    const TransitionCase strip = benchmark::held_transition();
    const double underside = strip.belt.section.underside;
    const Patch patch = belt_grid(strip.layout, {1, underside, grid, true, boundary_layers(strip.belt.section)});
    const BeltModel model = belt_model(strip, {"drawn", {}, drawn_by}, 1, patch, 1);
    System system(patch, model.system.supports());
    system.add(shell(model));
    const StartSurface start(strip.layout, 1, underside);
    NewtonSettings settings;
    settings.tolerance = 1e-11;
    const ControlPoints points = equilibrium(system, patch.follow([&](double u, double v) -> Eigen::Vector3d {
        return Eigen::Vector3d(1 + drawn_by / strip.layout.distance, 1, 1).cwiseProduct(start.at(u, v));
    }),
                                             settings);
    Held held{patch, points, 0};
    const ControlPoints forces = system.full_gradient(points);
    for (int j = 0; j < patch.across.size(); ++j) held.force += 2 * forces(x, patch.index(patch.along.size() - 1, j));
    return held;
}

Held held(double grid, const Rule& rule) {
    const Section section = benchmark::held_transition().belt.section;
    return held(grid, [&](const BeltModel& model) { return rule.shell(model.patch, section, no_curvature); });
}

/// The program's own shell with any number of Gauss points.
Held held_by_program(double grid, int points) {
    const Section section = benchmark::held_transition().belt.section;
    return held(grid, [&](const BeltModel& model) {
        return std::make_shared<ShellEnergy>(model.patch, section, NaturalCurvature{}, points);
    });
}

/// Largest difference of the edge strain on a stretch, relative to the largest strain there.
double strain_apart(const Held& one, const Held& other, double begin, double end) {
    double apart = 0, largest = 0;
    for (double at = begin; at <= end; at += 5) {
        apart = std::max(apart, std::abs(one.edge_strain(at) - other.edge_strain(at)));
        largest = std::max(largest, other.edge_strain(at));
    }
    return apart / largest;
}

}  // namespace

TEST_CASE("every rule rolls a cantilever up to a full circle") {
    for (const double turned : {180.0, 360.0}) {
        const double moment = full_circle * turned / 360;
        for (const Rule& rule : {gauss(2), gauss(3), gauss(4), of_patch()}) {
            std::vector<double> errors;
            const std::vector<int> spans{13, 25, 49};
            for (const int n : spans) errors.push_back(tip_error(rule, equal_breaks(length, n), moment));
            CAPTURE(rule.name);
            CAPTURE(turned);
            const double order = std::log(errors[1] / errors[2]) / std::log(49.0 / 25);
            CHECK(order > 3.8);
            // On graded knots, the longest span four times the shortest.
            CHECK(tip_error(rule, shrunk(fabric_grid(1).along, length), moment) < 5e-3);
            draw({"Cantilever rolled up, error of the tip, turned by " + std::to_string(static_cast<int>(turned)) + " degrees",
                  rule.name, "spans", "length", pairs({spans.begin(), spans.end()}, errors), false, true});
        }
        const Circle circle(moment);
        const Reference back{length - circle.at(length, 0).x(),
                             "length",
                             "circle under a moment with the shell's own law",
                             Kind::closed_form,
                             "nu = 0, 49 spans, rule of the whole patch",
                             1e-5,
                             "error of 49 cubic spans, falls as the fourth power of their size"};
        check("tip moves back, turned by " + std::to_string(static_cast<int>(turned)) + " degrees", back,
              length - rolled_tip(of_patch(), equal_breaks(length, 49), moment).x());
    }
}

TEST_CASE("a strip of a single span across is unstable under an end moment with two points across") {
    const double moment = full_circle / 2;
    for (const int points : {2, 3, 4})
        for (const int spans : {1, 2, 3}) {
            const Patch patch{CubicBasis(equal_breaks(length, 24)), CubicBasis(equal_breaks(1, spans))};
            const BandFactor factor(cantilever(gauss(points), patch, moment).tangent(on_circle(patch, moment)));
            CAPTURE(points);
            CAPTURE(spans);
            CHECK(factor.ok() == (points > 2 || spans > 1));
        }
}

TEST_CASE("the patch rule converges to the Kirchhoff-Love values of linear shells") {
    const LinearLimit roof = linear_limit("Scordelis-Lo roof", 1e-5, "error of the finest grid, falls as the fourth power");
    const std::vector<double> errors = errors_of_patch_rule(roof, roof_deflection, 25, 25 * 40 * pi / 180);
    CHECK(std::log(errors[2] / errors[3]) / std::log(25.0 / 17) > 3.8);
    const LinearLimit pinched = linear_limit("pinched cylinder", 6e-3, "error of the finest grid, falls with its square");
    errors_of_patch_rule(pinched, pinched_deflection, 300, 300 * pi / 2);
    // Coarse grids lock under full integration, less so with fewer points.
    const Patch coarse = panel(300, 300 * pi / 2, 9, 9);
    CHECK(off(pinched_deflection(of_patch(), coarse), pinched.value) < 0.051);
    CHECK(off(pinched_deflection(gauss(2), coarse), pinched.value) < 0.068);
    CHECK(off(pinched_deflection(gauss(4), coarse), pinched.value) > 0.1);
    // On graded knots.
    const Patch fabric = fabric_grid(1);
    const Patch graded{CubicBasis(shrunk(fabric.along, 25)), CubicBasis(shrunk(fabric.across, 25 * 40 * pi / 180))};
    CHECK(off(roof_deflection(of_patch(), graded), roof.value) < 1.5e-4);
}

TEST_CASE("the plain twin with two points solves the held strip as the program does") {
    const Held twin = held(2, gauss(2)), program = held_by_program(2, 2);
    CHECK(off(twin.force, program.force) < 1e-9);
    CHECK(strain_apart(twin, program, 200, 1800) < 1e-8);
}

#ifdef SWALE_LONG_TESTS
// The held corners are singular. What the rules make of them fades along the strip; with the patch rule a wave of two spans
// length goes on through it, since such waves are the soft ones.
TEST_CASE("on the held strip the patch rule is as good for the force and worse than two points for the edge strain") {
    const Held fine = held_by_program(0.25, 3);
    for (const double grid : {2.0, 1.0, 0.5}) {
        const Held two = held(grid, gauss(2)), three = held(grid, gauss(3)), patch = held(grid, of_patch());
        CAPTURE(grid);
        CHECK(off(patch.force, fine.force) < 2 * off(two.force, fine.force));
        CHECK(off(patch.force, fine.force) < 1.5e-4);
        const auto whole = [&](const Held& one) { return strain_apart(one, fine, 200, 1800); };
        CHECK(whole(three) < whole(two));
        CHECK(whole(two) < whole(patch));
        CHECK(whole(patch) < 2.5e-3 * grid);
        const auto middle = [&](const Held& one) { return strain_apart(one, fine, 500, 1500); };
        CHECK(middle(patch) > 1.5 * middle(two));
    }
}
#endif
