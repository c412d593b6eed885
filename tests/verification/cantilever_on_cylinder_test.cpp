#include "mesh/graded_breaks.h"
#include "solver/contact/contact_energy.h"
#include "solver/shell/shell_energy.h"
#include "tests/verification/compared_curve.h"
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

using Row = std::map<std::string, std::string>;

const char* const load_column = "P R^2/B";

Reference elastica(const Row& row, const std::string& column, const ReferenceTable& table, double tolerance, const char* why) {
    return {number(row, column),
            "-",
            table.source,
            Kind::other_method,
            "L/R = " + row.at("L/R") + ", P R^2/B = " + row.at(load_column),
            tolerance,
            why};
}

const char* exact = "six digits of the elastica, stretch of up to 5e-5, indentation of up to 5e-6 of the length";

void check_tip(const Row& row, const ReferenceTable& table, const Patch& patch, const ControlPoints& points) {
    const Eigen::Vector3d tip = place(patch, points, patch.along.end()) / radius;
    check("tip x/R", elastica(row, "x_tip/R", table, 1e-4, exact), tip.x());
    check("tip z/R", elastica(row, "y_tip/R", table, 1e-4, exact), tip.z());
    check("tip angle [deg]", elastica(row, "tip_angle_deg", table, 1e-4, exact),
          -turn(patch, points, patch.along.end()) / degree);
}

/// Pressure and line force are drawn over the load.
void check_arc(const Row& row, const ReferenceTable& table, const Patch& patch, const ControlPoints& points,
               const ContactEnergy& contact, ComparedCurve& pressures, ComparedCurve& forces) {
    const double arc = number(row, "contact_angle_deg") * degree * radius;
    const double pressure = contact.pressure_at(place(patch, points, arc / 4)) * radius / unit_force;
    const double force = line_force(patch, points, contact, arc) / unit_force;
    const Reference of_arc = elastica(row, "pressure_on_arc R^3/B", table, 2e-4, exact);
    const Reference of_line =
        elastica(row, "liftoff_line_force R^2/B", table, 5e-4,
                 "what is left of all the pressure less seven times as much on the arc, which is stretched by 5e-5");
    check("curvature on the arc, kappa R", elastica(row, "kappa_root R", table, 1e-4, exact),
          -curvature(patch, points, arc / 4) * radius);
    check("pressure on the arc R^3/B", of_arc, pressure);
    check("line force at lift-off R^2/B", of_line, force);
    pressures.add(number(row, load_column), of_arc.value, pressure);
    forces.add(number(row, load_column), of_line.value, force);
}

NewtonSettings careful() {
    NewtonSettings settings;
    settings.tolerance = 1e-10;  // small pressures beside large reactions at the clamp
    settings.step_cap = 5;
    settings.iterations = 400;
    return settings;
}

}  // namespace

TEST_CASE("a cantilever pressed on a cylinder wraps it as the elastica does") {
    const ReferenceTable table = reference_table("contact_cantilever_on_cylinder.csv");
    for (const char* slenderness : {"0.5", "1.0", "1.5"}) {
        const std::string name = std::string("L/R = ") + slenderness;
        ComparedCurve pressures("Cantilever on a cylinder: pressure on the arc", name, load_column, "p R^3/B");
        ComparedCurve forces("Cantilever on a cylinder: line force at lift-off", name, load_column, "F R^2/B");
        const Patch patch = cantilever_patch(std::stod(slenderness) * radius);
        ControlPoints points = flat(patch);
        for (const auto& row : table.where("L/R", slenderness).rows) {
            const bool arc = row.at("state") == "arc";
            const double pressure = arc ? number(row, "pressure_on_arc R^3/B") * unit_force / radius : 0;
            const Pressed model = pressed(patch, number(row, load_column) * unit_force, pressure);
            points = equilibrium(model.system, points, careful());
            check_tip(row, table, patch, points);
            if (arc) check_arc(row, table, patch, points, *model.contact, pressures, forces);
        }
        pressures.draw_both();
        forces.draw_both();
    }
}
