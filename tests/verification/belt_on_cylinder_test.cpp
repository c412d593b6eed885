#include "tests/verification/reference.h"
#include "tests/verification/wrapped_belt.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace swale;
using namespace swale::verification;

namespace {

Reference wrapped(double value, const char* unit, double tolerance, const char* why) {
    return {value,     unit, "elastica under tension on a rigid frictionless cylinder", Kind::closed_form, "nu = 0",
            tolerance, why};
}

}  // namespace

TEST_CASE("a belt with an arc of contact has the wrap and pressure and line forces of the elastica") {
    const Wrap wrap{std::numbers::pi / 3, 20 * Wrap::unit_force, 2000};
    const WrappedBelt solution = wrapped_belt(wrap, patch_for(wrap, {wrap.lift_off() / 2, 0.5, wrap.lift_off() / 2 + 8, 0.2}));
    const Bearing bearing = bearing_of(solution);
    // (4 D/k)^(1/4) = 2.1 mm is the width over which the foundation spreads the line force; sum and moment don't see it.
    const char* layer = "stretch of 2e-5, indentation of 1e-4 of 100 mm, spans of a quarter of the foundation's layer";
    check("pressure", wrapped(wrap.pressure(), "N/mm^2", 1e-4, layer), bearing.pressure);
    check("lift-off", wrapped(wrap.lift_off(), "mm", 1e-4, layer), bearing.lift_off);
    check("line force at lift-off", wrapped(wrap.line_force(), "N/mm", 1e-4, layer), bearing.line_force);
    check("curvature on the arc", wrapped(1 / Wrap::radius, "1/mm", 1e-4, layer),
          -curvature(solution.patch, solution.points, wrap.lift_off() / 3));
}

TEST_CASE("on the arc the membrane force is the axial force less D kappa^2") {
    // The axial force is the derivative of A (lambda^2 - 1)^2/8 + D (lambda theta')^2/2 with respect to lambda: with N11 = A
    // e11 it is lambda N11 + D lambda theta'^2. So N11 and the strain read from it leave out D kappa^2 on a bent belt.
    const Wrap wrap{std::numbers::pi / 3, 20 * Wrap::unit_force, 2000};
    const WrappedBelt solution = wrapped_belt(wrap, patch_for(wrap, {wrap.lift_off() / 2, 0.5, wrap.lift_off() / 2 + 8, 0.2}));
    const double axial = wrap.tension - Wrap::unit_force / 2;
    const Eigen::Vector3d along = solution.patch.jet(solution.points, wrap.lift_off() / 3, Wrap::width / 2).along;
    check("force along", wrapped(axial - Wrap::unit_force, "N/mm", 1e-3, "stretch and rounding of a strain of 2e-5"),
          wrap.membrane() * (along.squaredNorm() - 1) / 2);
}

TEST_CASE("a belt on a line of contact has the curvature and reaction of the elastica") {
    const Wrap wrap{std::numbers::pi / 6, 5 * Wrap::unit_force, 1e5};
    const WrappedBelt solution = wrapped_belt(wrap, patch_for(wrap, {0, 0.1, 1, 0.2}));
    const double peak = 2 * std::sqrt(wrap.tension / Wrap::bending) * std::sin(wrap.angle / 4);
    check("curvature under the line", wrapped(peak, "1/mm", 5e-3, "the line is 0.4 mm wide, a hundredth of sqrt(D/T)"),
          -curvature(solution.patch, solution.points, 0));
    // The half belt carries half of the line force.
    check("line reaction", wrapped(wrap.tension * std::sin(wrap.angle / 2), "N/mm", 1e-6, "equilibrium, at any foundation"),
          solution.contact->force(solution.points).z() / Wrap::width);
}

TEST_CASE("off the contact the bending energy of the belt follows its angle") {
    // D kappa^2/2 = T (1 - cos(phi/2 - theta)): the first integral of the elastica, on any foundation.
    const Wrap wrap{std::numbers::pi / 6, 5 * Wrap::unit_force, 1e5};
    const WrappedBelt solution = wrapped_belt(wrap, patch_for(wrap, {0, 0.1, 1, 0.2}));
    for (const double s : {5.0, 20.0, 60.0, 120.0}) {
        const double left = wrap.angle / 2 + turn(solution.patch, solution.points, s);
        const double expected = std::sqrt(2 * wrap.tension / Wrap::bending * (1 - std::cos(left)));
        check("curvature beside the line", wrapped(expected, "1/mm", 2e-3, "stretch and spans of an eighth of sqrt(D/T)"),
              -curvature(solution.patch, solution.points, s));
    }
}
