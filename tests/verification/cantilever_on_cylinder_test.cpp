#include "mesh/graded_breaks.h"
#include "solver/contact/contact_energy.h"
#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>

// A cantilever clamped on top of a frictionless cylinder, along its tangent, and pressed on it by a dead force P at its tip:
// L/R = 1, P R^2/B = 5. It lies on the cylinder up to an angle theta_c, under the pressure P sin(theta_c)/R and a line force
// P cos(theta_c) where it leaves. theta_c and the tip are from the inextensible elastica, own integration.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double radius = 100, length = 100, bending = 1e4, membrane = 1e6, width = 5;
constexpr double load = 5 * bending / (radius * radius);  // [N/mm]
constexpr double degree = 0.017453292519943295;
constexpr double leaving = 40.739510 * degree, tip_angle = 48.817934 * degree, tip_x = 0.852621 * radius,
                 tip_z = -0.450528 * radius;
constexpr double foundation = 2000;

Reference elastica(double value, const char* unit, double tolerance) {
    return {value,
            unit,
            "inextensible elastica on a rigid cylinder, own integration",
            Kind::other_method,
            "nu = 0, L/R = 1, P R^2/B = 5",
            tolerance,
            "six digits of the elastica, stretch of 5e-5, indentation of 2e-5 of 100 mm"};
}

}  // namespace

TEST_CASE("a cantilever pressed on a cylinder wraps it as the elastica does") {
    const double lift_off = radius * leaving, pressure = load * std::sin(leaving) / radius;
    const Patch patch = strip(graded_breaks(0, length, 5, {{lift_off / 2, 0.5, lift_off / 2 + 8, 0.2}}, {}), width);
    const Roll roll{{0, 0, -radius}, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, 50 * width, 1};
    const auto contact =
        std::make_shared<ContactEnergy>(patch, roll, ContactLaw{foundation, 1e-6}, 0.0, ContactWindow{0, length, 0, width});
    Supports supports(patch.points());
    clamp_begin(supports, patch, -pressure / foundation);  // at the indentation of the arc
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(membrane, bending)));
    system.add(contact);
    system.add(std::make_shared<DeadLoad>(end_load(patch, {0, 0, -load * width})));
    NewtonSettings settings;
    settings.step_cap = 5;
    settings.iterations = 200;
    const ControlPoints points = equilibrium(system, flat(patch), settings);

    const Eigen::Vector3d tip = place(patch, points, length);
    check("tip x", elastica(tip_x, "mm", 1e-4), tip.x());
    check("tip z", elastica(tip_z, "mm", 1e-4), tip.z());
    check("tip angle", elastica(tip_angle, "rad", 1e-4), -turn(patch, points, length));
    check("pressure on the arc", elastica(pressure, "N/mm^2", 1e-4), contact->pressure_at(place(patch, points, lift_off / 2)));
    check("curvature on the arc", elastica(1 / radius, "1/mm", 1e-4), -curvature(patch, points, lift_off / 2));
    // The tangent where the cantilever leaves; there the foundation's layer turns it most.
    check("angle at lift-off", elastica(leaving, "rad", 5e-4), -turn(patch, points, lift_off));
}
