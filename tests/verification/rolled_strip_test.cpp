#include "solver/shell/shell_energy.h"
#include "tests/solver/term_checks.h"
#include "tests/verification/end_moment.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <numbers>

// Cantilever rolled up by a moment at its end: L = 12, b = 1, h = 0.1, E = 1.2e6, nu = 0, M up to 50 pi/3, a full circle.
// Sze, Liu and Lo, Finite Elements in Analysis and Design 40 (2004) 1551, problem 3.2; and half of that circle as stress-free
// shape.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double length = 12, width = 1, thickness = 0.1, modulus = 1.2e6;
constexpr double membrane = modulus * thickness, bending = membrane * thickness * thickness / 12;

/// A strip of the law A (lambda^2 - 1)/2, D lambda theta' under a moment alone:
///   D lambda^2 theta' = M,   A (lambda^2 - 1)/2 + D theta'^2 = 0.
/// The moment shortens the middle line by D theta'^2/A, some (h/R)^2/12.
struct Circle {
    double stretch, turning;  // lambda, theta' per unstretched length
    double angle() const { return turning * length; }
    double radius() const { return stretch / turning; }
    double back() const { return length - radius() * std::sin(angle()); }
    double up() const { return radius() * (1 - std::cos(angle())); }
};

Circle circle_under(double moment) {
    Circle circle{1, moment / bending};
    for (int k = 0; k < 30; ++k) {
        const double square = 1 - 2 * bending / membrane * circle.turning * circle.turning;
        circle = {std::sqrt(square), moment / (bending * square)};
    }
    return circle;
}

System clamped(const Patch& patch, const ShellEnergy& shell) {
    Supports supports(patch.points());
    clamp_begin(supports, patch);
    keep_plane(supports, patch);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(shell));
    return system;
}

NewtonSettings short_steps() {
    NewtonSettings settings;
    settings.step_cap = 0.5;
    settings.iterations = 200;
    return settings;
}

Reference circle_value(double value, double tolerance) {
    return {value,
            "length",
            "circle under a moment with the shell's own law",
            Kind::closed_form,
            "nu = 0, 48 spans",
            tolerance,
            "error of 48 cubic spans on a full circle, falls as the fourth power of their size"};
}

Reference line_circle(double value) {
    return {value,
            "length",
            "u = L - R sin(L/R), w = R (1 - cos(L/R)), R = EI/M",
            Kind::closed_form,
            "nu = 0, 48 spans, inextensible line",
            3e-3,
            "the shell's law D lambda^2 theta' = M turns further by (h/R)^2/6: felt most where little is left of the rise"};
}

Reference mesh_value(const ReferenceTable& table, double value) {
    return published(table, value, "nu = 0, 48 spans", 7e-3, "shear-flexible mesh, itself 4e-3 off the exact circle");
}

Reference knot_curvature(double value) {
    return {value,
            "1/length",
            "circle under a moment with the shell's own law",
            Kind::closed_form,
            "nu = 0, 48 spans",
            2e-3,
            "second derivative of a cubic spline at a knot, (h/R)^2/12 = 1.4e-3 on the full circle"};
}

}  // namespace

TEST_CASE("end moment: gradient and tangent are derivatives") {
    const Patch patch = strip(equal_breaks(length, 3), width);
    const EndMoment moment(patch, 7, 2.3);
    for (unsigned seed = 0; seed < 3; ++seed) {
        const ControlPoints points = term_checks::crumpled(patch, 0.1, seed);
        CHECK(term_checks::gradient_error(moment, points, 1e-3) < 1e-9);
        CHECK(term_checks::tangent_error(moment, points, 1e-3) < 1e-8);
    }
}

TEST_CASE("a cantilever under an end moment rolls up to a full circle") {
    const ReferenceTable table = reference_table("sze_3_2_cantilever_moment.csv");
    const std::vector<double> moments = table.numbers("M");
    const std::vector<double> exact_back = table.numbers("minus_Utip_exact"), exact_up = table.numbers("Wtip_exact");
    const std::vector<double> mesh_back = table.numbers("minus_Utip_sze_fe"), mesh_up = table.numbers("Wtip_sze_fe");
    const Patch patch = strip(equal_breaks(length, 48), width);
    const ShellEnergy shell(patch, strip_section(membrane, bending));
    std::vector<double> back, up;
    ControlPoints points = flat(patch);
    for (std::size_t k = 0; k < moments.size(); ++k) {
        System system = clamped(patch, shell);
        const Circle circle = circle_under(moments[k]);
        system.add(std::make_shared<EndMoment>(patch, moments[k], circle.angle()));
        points = equilibrium(system, points, short_steps());
        const Eigen::Vector3d tip = place(patch, points, length);
        back.push_back(length - tip.x());
        up.push_back(tip.z());
        CAPTURE(moments[k]);
        CHECK(std::abs(up[k] - circle.up()) < 1e-4);
        if (k % 4 != 3) continue;
        const std::string at = ", turned by " + std::to_string(18 * (k + 1)) + " degrees";
        check("tip moves back" + at, circle_value(circle.back(), 1e-5), back[k]);
        check("tip moves back" + at, line_circle(exact_back[k]), back[k]);
        check("tip moves back" + at, mesh_value(table, mesh_back[k]), back[k]);
        check("curvature at mid-length" + at, knot_curvature(moments[k] / (bending * circle.stretch)),
              curvature(patch, points, length / 2));
        if (exact_up[k] == 0) continue;
        check("tip moves up" + at, line_circle(exact_up[k]), up[k]);
        check("tip moves up" + at, mesh_value(table, mesh_up[k]), up[k]);
    }
    const auto both = [&](const std::string& name, const std::vector<double>& u, const std::vector<double>& w, bool known) {
        draw({"Cantilever under an end moment", "back, " + name, "displacement of the tip", "M", pairs(u, moments), known});
        draw({"Cantilever under an end moment", "up, " + name, "displacement of the tip", "M", pairs(w, moments), known});
    };
    both("swale", back, up, false);
    both("published", mesh_back, mesh_up, true);
}

TEST_CASE("a strip with stress-free curvature rolls up to that circle without stress") {
    const Patch patch = strip(equal_breaks(length, 48), width);
    const double radius = length / pi;  // half a circle
    const ShellEnergy shell(patch, strip_section(membrane, bending),
                            [&](double, double) { return Eigen::Vector3d(1 / radius, 0, 0); });
    // Where no force is left a residual relative to the forces says nothing: Newton goes on to the rounding of the energy.
    const System system = clamped(patch, shell);
    const NewtonOutcome outcome = minimise(system, system.supports().project(flat(patch)), short_steps());
    const ControlPoints points = system.supports().expand(outcome.q);
    const Eigen::Vector3d tip = place(patch, points, length);
    CHECK(std::abs(tip.x()) < 1e-4);
    check("tip height",
          {2 * radius, "length", "half a circle", Kind::closed_form, "nu = 0, 48 spans", 1e-5, "error of the spans"}, tip.z());
    const double flat_energy = length * width * bending / (radius * radius) / 2;
    CHECK(shell.energy(points) < 1e-6 * flat_energy);
}
