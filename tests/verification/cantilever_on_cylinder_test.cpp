#include "mesh/graded_breaks.h"
#include "solver/contact/contact_energy.h"
#include "solver/shell/shell_energy.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>
#include <string>

// A cantilever clamped on top of a frictionless cylinder, along its tangent, and pressed on it by a dead force P at its tip. It
// lies on the cylinder up to an angle theta_c, under the pressure P sin(theta_c)/R and a line force P cos(theta_c) where it
// leaves; or it is free from the clamp on if P is too small to bend it as much as the cylinder.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double radius = 100, bending = 1e4, membrane = 1e6, width = 5;
constexpr double unit_force = bending / (radius * radius);  // [N/mm]
constexpr double degree = std::numbers::pi / 180;
constexpr double foundation = 1e5;

/// Fine where it lies on the cylinder under the highest load.
Patch cantilever_patch(double length) {
    return strip(graded_breaks(0, length, 4, {{length / 2, 0.2, length / 2, 0.2}}, {}), width);
}

struct Pressed {
    System system;
    std::shared_ptr<ContactEnergy> contact;
};

/// The clamp at the indentation of the arc, if there is one.
Pressed pressed(const Patch& patch, double load, double arc_pressure) {
    const Roll roll{{0, 0, -radius}, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, 50 * width, 1};
    const ContactWindow window{0, patch.along.end(), 0, width};
    // The corner of the law is far below the smallest indentation, 2e-8 mm.
    const auto contact = std::make_shared<ContactEnergy>(patch, roll, ContactLaw{foundation, 1e-9}, 0.0, window);
    Supports supports(patch.points());
    clamp_begin(supports, patch, -arc_pressure / foundation);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(membrane, bending)));
    system.add(contact);
    system.add(std::make_shared<DeadLoad>(end_load(patch, {0, 0, -load * width})));
    return {system, contact};
}

/// Line force where the cantilever leaves: all of the pressure but for what is on the arc [N/mm]. A light cantilever on a
/// foundation hops just before that line; so the pressure of the arc is read at its first quarter.
double line_force(const Patch& patch, const ControlPoints& points, const ContactEnergy& contact, double arc) {
    double sum = 0;
    for (const LinePoint& point : gauss_rule(patch.along, 6).points)
        sum += point.weight * contact.pressure_at(place(patch, points, point.position));
    return sum - contact.pressure_at(place(patch, points, arc / 4)) * arc;
}

}  // namespace

TEST_CASE("a cantilever pressed on a cylinder wraps it as the elastica does") {
    const ReferenceTable table = reference_table("contact_cantilever_on_cylinder.csv");
    for (const char* slenderness : {"0.5", "1.0", "1.5"}) {
        const double length = std::stod(slenderness) * radius;
        const Patch patch = cantilever_patch(length);
        ControlPoints points = flat(patch);
        for (const auto& row : table.where("L/R", slenderness).rows) {
            const double load = number(row, "P R^2/B") * unit_force;
            const bool arc = row.at("state") == "arc";
            const double pressure = arc ? number(row, "pressure_on_arc R^3/B") * unit_force / radius : 0;
            const Pressed model = pressed(patch, load, pressure);
            NewtonSettings settings;
            settings.tolerance = 1e-10;  // small pressures beside large reactions at the clamp
            settings.step_cap = 5;
            settings.iterations = 400;
            points = equilibrium(model.system, points, settings);
            const auto compare = [&](const char* quantity, const char* column, double tolerance, const char* why,
                                     double measured) {
                check(quantity,
                      {number(row, column), "-", table.source, Kind::other_method,
                       std::string("L/R = ") + slenderness + ", P R^2/B = " + row.at("P R^2/B"), tolerance, why},
                      measured);
            };
            const char* exact = "six digits of the elastica, stretch of up to 5e-5, indentation of up to 5e-6 of the length";
            const Eigen::Vector3d tip = place(patch, points, length) / radius;
            compare("tip x/R", "x_tip/R", 1e-4, exact, tip.x());
            compare("tip z/R", "y_tip/R", 1e-4, exact, tip.z());
            compare("tip angle [deg]", "tip_angle_deg", 1e-4, exact, -turn(patch, points, length) / degree);
            if (!arc) continue;
            const double leaving = number(row, "contact_angle_deg") * degree * radius;
            compare("curvature on the arc, kappa R", "kappa_root R", 1e-4, exact,
                    -curvature(patch, points, leaving / 4) * radius);
            compare("pressure on the arc R^3/B", "pressure_on_arc R^3/B", 2e-4, exact,
                    model.contact->pressure_at(place(patch, points, leaving / 4)) * radius / unit_force);
            compare("line force at lift-off R^2/B", "liftoff_line_force R^2/B", 5e-4,
                    "what is left of all the pressure less seven times as much on the arc, which is stretched by 5e-5",
                    line_force(patch, points, *model.contact, leaving) / unit_force);
        }
    }
}
