#include "mesh/graded_breaks.h"
#include "solver/contact/contact_energy.h"
#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <numbers>

// A belt with bending stiffness under tension over a frictionless cylinder, wrap angle phi, far tension T [N/mm]. The
// inextensible elastica on a rigid cylinder of radius R at the middle line: with cos alpha = 1 - D/(2 T R^2)
//   arc:    alpha < phi/2: contact over phi - 2 alpha, pressure p = (T - D/(2 R^2))/R on it and a line force
//           sqrt(T D - D^2/(4 R^2))/R at each lift-off;
//   line:   otherwise: curvature 2 sqrt(T/D) sin(phi/4) under a line force 2 T sin(phi/2).
// Closed forms derived for this project; Singh, Journal of Elasticity (2022), and Grandgeorge, Sano and Reis (2022) treat the
// same problem. Modelled is one half, 14 lengths sqrt(D/T) long; A is so large that the stretch is 2e-5.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double radius = 100, bending = 1e4, membrane = 1e6, width = 5;
constexpr double unit_force = bending / (radius * radius);  // D/R^2, 1 N/mm

struct Wrap {
    double angle, tension, foundation;
    double layer() const { return std::sqrt(bending / tension); }
    double alpha() const { return std::acos(1 - unit_force / (2 * tension)); }
    double lift_off() const { return radius * (angle / 2 - alpha()); }  // from the middle of the arc
    double pressure() const { return (tension - unit_force / 2) / radius; }
    double line_force() const { return std::sqrt(tension * bending - bending * unit_force / 4) / radius; }
};

/// The belt's half from the middle of the wrap, where it touches the cylinder at z = 0.
struct Solution {
    Patch patch;
    ControlPoints points;
    std::shared_ptr<ContactEnergy> contact;
};

Patch patch_for(const Wrap& wrap, double from, double reach, double size) {
    const double length = std::max(wrap.lift_off(), 0.0) + 14 * wrap.layer();
    return strip(graded_breaks(0, length, wrap.layer() / 8, {{from, size, reach, 0.2}}, {}), width);
}

/// Laid on the cylinder up to half the wrap, straight beyond.
Eigen::Vector3d laid_on(const Wrap& wrap, double s, double y) {
    const double turned = std::min(s / radius, wrap.angle / 2), beyond = s - radius * turned;
    return {radius * std::sin(turned) + beyond * std::cos(turned), y,
            radius * (std::cos(turned) - 1) - beyond * std::sin(turned)};
}

Solution solve(const Wrap& wrap, const Patch& patch) {
    const Roll roll{{0, 0, -radius}, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, 50 * width, 1};
    // The corner of the law is rounded over a thousandth of the indentation under the line force.
    const ContactLaw law{wrap.foundation, 1e-6};
    const auto contact = std::make_shared<ContactEnergy>(patch, roll, law, 0.0, ContactWindow{0, patch.along.end(), 0, width});
    Supports supports(patch.points());
    mirror_begin(supports, patch);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(membrane, bending)));
    system.add(contact);
    const Eigen::Vector3d direction(std::cos(wrap.angle / 2), 0, -std::sin(wrap.angle / 2));
    system.add(std::make_shared<DeadLoad>(end_load(patch, wrap.tension * width * direction)));
    NewtonSettings settings;
    settings.tolerance = 1e-11;  // small reactions beside a large tension
    settings.step_cap = 5;
    settings.iterations = 200;
    const ControlPoints start = patch.follow([&](double s, double y) { return laid_on(wrap, s, y); });
    return {patch, equilibrium(system, start, settings), contact};
}

/// What the pressure integrates to: with p uniform up to the lift-off s and a line force F there, the sum is p s + F and its
/// first moment p s^2/2 + F s, whatever width the foundation gives to the line force.
struct Bearing {
    double pressure, line_force, lift_off;
};

Bearing bearing_of(const Solution& solution) {
    double sum = 0, moment = 0;
    for (const LinePoint& point : gauss_rule(solution.patch.along, 6).points) {
        const double p = solution.contact->pressure_at(place(solution.patch, solution.points, point.position));
        sum += point.weight * p;
        moment += point.weight * p * point.position;
    }
    const double pressure = solution.contact->pressure_at(place(solution.patch, solution.points, 0));
    const double lift_off = (sum - std::sqrt(sum * sum - 2 * pressure * moment)) / pressure;
    return {pressure, sum - pressure * lift_off, lift_off};
}

Reference wrapped(double value, const char* unit, double tolerance, const char* why) {
    return {value,     unit, "elastica under tension on a rigid frictionless cylinder", Kind::closed_form, "nu = 0",
            tolerance, why};
}

}  // namespace

TEST_CASE("a belt with an arc of contact has the wrap and pressure and line forces of the elastica") {
    const Wrap wrap{std::numbers::pi / 3, 20 * unit_force, 2000};
    const Solution solution = solve(wrap, patch_for(wrap, wrap.lift_off() / 2, wrap.lift_off() / 2 + 8, 0.5));
    const Bearing bearing = bearing_of(solution);
    // (4 D/k)^(1/4) = 2.1 mm is the width over which the foundation spreads the line force; sum and moment don't see it.
    const char* layer = "stretch of 2e-5, indentation of 1e-4 of 100 mm, spans of a quarter of the foundation's layer";
    check("pressure", wrapped(wrap.pressure(), "N/mm^2", 1e-4, layer), bearing.pressure);
    check("lift-off", wrapped(wrap.lift_off(), "mm", 1e-4, layer), bearing.lift_off);
    check("line force at lift-off", wrapped(wrap.line_force(), "N/mm", 1e-4, layer), bearing.line_force);
    check("curvature on the arc", wrapped(1 / radius, "1/mm", 1e-4, layer),
          -curvature(solution.patch, solution.points, wrap.lift_off() / 3));
}

TEST_CASE("on the arc the membrane force is the axial force less D kappa^2") {
    // The axial force is the derivative of A (lambda^2 - 1)^2/8 + D (lambda theta')^2/2 with respect to lambda: with N11 = A
    // e11 it is lambda N11 + D lambda theta'^2. So N11 and the strain read from it leave out D kappa^2 on a bent belt.
    const Wrap wrap{std::numbers::pi / 3, 20 * unit_force, 2000};
    const Solution solution = solve(wrap, patch_for(wrap, wrap.lift_off() / 2, wrap.lift_off() / 2 + 8, 0.5));
    const double axial = wrap.tension - unit_force / 2;
    const Eigen::Vector3d along = solution.patch.jet(solution.points, wrap.lift_off() / 3, width / 2).along;
    check("force along", wrapped(axial - unit_force, "N/mm", 1e-3, "stretch and rounding of a strain of 2e-5"),
          membrane * (along.squaredNorm() - 1) / 2);
}

TEST_CASE("a belt on a line of contact has the curvature and reaction of the elastica") {
    const Wrap wrap{std::numbers::pi / 6, 5 * unit_force, 1e5};
    const Solution solution = solve(wrap, patch_for(wrap, 0, 1, 0.1));
    const double peak = 2 * std::sqrt(wrap.tension / bending) * std::sin(wrap.angle / 4);
    check("curvature under the line", wrapped(peak, "1/mm", 5e-3, "the line is 0.4 mm wide, a hundredth of sqrt(D/T)"),
          -curvature(solution.patch, solution.points, 0));
    // The half belt carries half of the line force.
    check("line reaction", wrapped(wrap.tension * std::sin(wrap.angle / 2), "N/mm", 1e-6, "equilibrium, at any foundation"),
          solution.contact->force(solution.points).z() / width);
}

TEST_CASE("off the contact the bending energy of the belt follows its angle") {
    // D kappa^2/2 = T (1 - cos(phi/2 - theta)): the first integral of the elastica, on any foundation.
    const Wrap wrap{std::numbers::pi / 6, 5 * unit_force, 1e5};
    const Solution solution = solve(wrap, patch_for(wrap, 0, 1, 0.1));
    for (const double s : {5.0, 20.0, 60.0, 120.0}) {
        const double left = wrap.angle / 2 + turn(solution.patch, solution.points, s);
        const double expected = std::sqrt(2 * wrap.tension / bending * (1 - std::cos(left)));
        check("curvature beside the line", wrapped(expected, "1/mm", 2e-3, "stretch and spans of an eighth of sqrt(D/T)"),
              -curvature(solution.patch, solution.points, s));
    }
}
