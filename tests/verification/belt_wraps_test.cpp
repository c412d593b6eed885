#include "tests/verification/compared_curve.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/wrapped_belt.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <tuple>
#include <vector>

// The closed form of a belt over a cylinder in many wraps and tensions, and how the result depends on the spans and on the
// foundation that stands for the cover.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double degree = std::numbers::pi / 180;
const char* const tensions = "T R^2/B";

/// The table's wrap on so stiff a foundation that its layer is a tenth of the belt's own and of the arc.
Wrap arc_of(const std::map<std::string, std::string>& row) {
    Wrap wrap = wrap_on(number(row, "wrap_angle_deg") * degree, number(row, tensions) * Wrap::unit_force, 5e4);
    const double layer = std::min(wrap.foundation_layer(), wrap.lift_off() / 10);
    wrap.foundation = 4 * Wrap::bending / std::pow(layer, 4);
    return wrap;
}

/// Spans of a quarter of the foundation's layer all along the arc: on longer ones the spline leaves the circle by some of the
/// small indentation.
WrappedBelt on_arc(const Wrap& wrap) {
    const double layer = wrap.foundation_layer();
    return wrapped_belt(wrap, patch_for(wrap, {wrap.lift_off() / 2, layer / 4, wrap.lift_off() / 2 + 4 * layer, 0.2}));
}

std::string conditions_of(const std::map<std::string, std::string>& row) {
    return "wrap " + row.at("wrap_angle_deg") + " deg, T R^2/B = " + row.at(tensions);
}

void check_arc(const std::map<std::string, std::string>& row, const ReferenceTable& table, ComparedCurve& pressures,
               ComparedCurve& forces) {
    const Wrap wrap = arc_of(row);
    const Bearing bearing = bearing_of(on_arc(wrap));
    const bool narrow = wrap.lift_off() < wrap.layer();
    const char* why = narrow
                          ? "arc of less than the belt's own layer, nearly all is in the two line forces: the foundation shows"
                          : "stretch of 2e-5, spans of a quarter of the foundation's layer";
    const auto compare = [&](const char* quantity, const char* column, double tolerance, double measured) {
        check(quantity, {number(row, column), "-", table.source, Kind::closed_form, conditions_of(row), tolerance, why},
              measured);
    };
    const double pressure = bearing.pressure * Wrap::radius / Wrap::unit_force, force = bearing.line_force / Wrap::unit_force;
    if (!narrow) {
        compare("pressure R^3/B", "pressure R^3/B", 1e-4, pressure);
        pressures.add(number(row, tensions), number(row, "pressure R^3/B"), pressure);
    }
    compare("arc of contact [deg]", "contact_arc_deg", narrow ? 5e-3 : 1e-4, 2 * bearing.lift_off / Wrap::radius / degree);
    compare("line force at lift-off R^2/B", "liftoff_line_force R^2/B", narrow ? 1e-2 : 1e-4, force);
    forces.add(number(row, tensions), number(row, "liftoff_line_force R^2/B"), force);
}

/// For tensions T R^2/B between two limits.
void check_arcs(const std::vector<const char*>& angles, double from, double to) {
    const ReferenceTable table = reference_table("contact_capstan_bending_frictionless.csv").where("contact", "arc");
    for (const char* angle : angles) {
        const std::string name = std::string(angle) + " deg";
        ComparedCurve pressures("Belt over a cylinder: pressure on the arc", name, tensions, "p R^3/B");
        ComparedCurve forces("Belt over a cylinder: line force at lift-off", name, tensions, "F R^2/B");
        for (const auto& row : table.where("wrap_angle_deg", angle).rows)
            if (const double tension = number(row, tensions); tension > from && tension < to)
                check_arc(row, table, pressures, forces);
        pressures.draw_both();
        forces.draw_both();
    }
}

void check_line(const std::map<std::string, std::string>& row, const ReferenceTable& table, ComparedCurve& curvatures) {
    const Wrap wrap = wrap_on(number(row, "wrap_angle_deg") * degree, number(row, tensions) * Wrap::unit_force, 1e8);
    const WrappedBelt belt = wrapped_belt(wrap, patch_for(wrap, {0, wrap.layer() * 1e-3, wrap.layer() * 1e-2, 0.2}));
    const double peak = number(row, "kappa_max R"), measured = -curvature(belt.patch, belt.points, 0) * Wrap::radius;
    const bool close = peak > 0.9;
    check("curvature under the line, kappa R",
          {peak, "-", table.source, Kind::closed_form, conditions_of(row), close ? 7e-3 : 2e-3,
           close ? "nearly as curved as the cylinder: the line gets broad" : "the line is some thousandths of sqrt(D/T) wide"},
          measured);
    // The half belt carries half of the line force.
    check("line reaction R^2/B",
          {number(row, "point_reaction R^2/B"), "-", table.source, Kind::closed_form, conditions_of(row), 1e-5,
           "equilibrium; six digits of the table"},
          2 * belt.contact->force(belt.points).z() / Wrap::width / Wrap::unit_force);
    curvatures.add(number(row, tensions), peak, measured);
}

/// What is seen on a wrap of 120 degrees: the arc is four times as long as the belt's own layer.
struct Error {
    double pressure;    // largest on the arc but for two layers sqrt(D/T) at lift-off
    double line_force;  // at lift-off
    double curvature;   // in the middle
};

constexpr double wide_angle = 120 * degree, middling_tension = 20 * Wrap::unit_force;

/// Equal spans of `size` layers on a foundation in D/l^4.
Error error_of(double size, double relative_foundation) {
    const Wrap wrap = wrap_on(wide_angle, middling_tension, relative_foundation);
    const double length = wrap.lift_off() + 14 * wrap.layer();
    const int spans = static_cast<int>(std::lround(length / (size * wrap.layer())));
    const WrappedBelt belt = wrapped_belt(wrap, strip(equal_breaks(length, spans), Wrap::width));
    double worst = 0;
    for (int k = 0; k <= 200; ++k) {
        const double s = (wrap.lift_off() - 2 * wrap.layer()) * k / 200;
        const double pressure = belt.contact->pressure_at(place(belt.patch, belt.points, s));
        worst = std::max(worst, std::abs(pressure / wrap.pressure() - 1));
    }
    return {worst, std::abs(bearing_of(belt).line_force / wrap.line_force() - 1),
            std::abs(-curvature(belt.patch, belt.points, 0) * Wrap::radius - 1)};
}

}  // namespace

TEST_CASE("belts with an arc of contact have the pressure and lift-off and line force of the elastica") {
    check_arcs({"20", "30", "60", "90", "120", "180"}, 0, 200);
}

TEST_CASE("belts under so high a tension that bending hardly counts have the pressure of a string and small line forces") {
    check_arcs({"10", "20", "30", "60", "90", "120", "180"}, 200, 2000);
}

TEST_CASE("belts with a line of contact have the curvature and reaction of the elastica") {
    const ReferenceTable table = reference_table("contact_capstan_bending_frictionless.csv").where("contact", "point");
    for (const char* angle : {"10", "20", "30", "60", "90", "120", "180"}) {
        ComparedCurve curvatures("Belt over a cylinder: curvature under a line of contact", std::string(angle) + " deg",
                                 tensions, "kappa R");
        for (const auto& row : table.where("wrap_angle_deg", angle).rows) check_line(row, table, curvatures);
        curvatures.draw_both();
    }
}

TEST_CASE("the pressure on an arc ripples by what a cubic spline leaves of the circle") {
    // Of a function with fourth derivative f4 the best cubic spline of equal spans h leaves f4 h^4 B4/24, with Bernoulli's B4
    // at most f4 h^4/720, at the breaks; a circle has f4 = 1/R^3. Times the foundation that is a ripple of k h^4/(720 R^3) in
    // the pressure T/R: it bounds the foundation that a grid can carry, whatever the bending stiffness.
    const double size = 0.125;
    for (const double factor : {4.0, 16.0, 64.0}) {
        const double foundation = factor / std::pow(size, 4);
        const Wrap wrap = wrap_on(wide_angle, middling_tension, foundation);
        const double ripple = wrap.foundation * std::pow(size * wrap.layer(), 4) / (720 * std::pow(Wrap::radius, 3));
        check("ripple of the pressure on an arc",
              {ripple / wrap.pressure(), "-", "cubic spline beside a circle, k h^4/(720 R^3)", Kind::closed_form,
               "T R^2/B = 20, k h^4/D = " + std::to_string(static_cast<int>(factor)), 0.05,
               "the spline is that of least energy, not the nearest; the belt gives way to the ripple"},
              error_of(size, foundation).pressure);
    }
}

TEST_CASE("pressure and line force and curvature on an arc converge with the spans and stiffen with the foundation") {
    const std::string by_span = "Belt over a cylinder: error by span, k = 1e5 D/l^4, l = sqrt(D/T)";
    const std::string by_foundation = "Belt over a cylinder: error by foundation, spans of l/32, l = sqrt(D/T)";
    const auto curves = [](const std::string& picture, const std::string& x_label) {
        std::vector<Curve> three;
        for (const char* name : {"pressure on the arc", "line force at lift-off", "curvature in the middle"})
            three.push_back({picture, name, x_label, "error", {}, false, true});
        return three;
    };
    const auto add = [](std::vector<Curve>& three, double at, const Error& error) {
        three[0].points.emplace_back(at, error.pressure);
        three[1].points.emplace_back(at, error.line_force);
        three[2].points.emplace_back(at, error.curvature);
    };
    std::vector<Curve> spans = curves(by_span, "span / l"), foundations = curves(by_foundation, "k l^4/D");
    for (const double size : {0.25, 0.125, 0.0625, 0.03125, 0.015625}) add(spans, size, error_of(size, 1e5));
    for (const double k : {1e1, 1e2, 1e3, 1e4, 1e5, 1e6}) add(foundations, k, error_of(0.03125, k));
    for (const auto* three : {&spans, &foundations})
        for (const Curve& curve : *three) draw(curve);
    // The sum and moment of the pressure tell the line force on any foundation up to the ripple.
    const auto& [pressure, line_force, curvature_in_middle] = std::tie(foundations[0], foundations[1], foundations[2]);
    CHECK(pressure.points[3].second < 1e-3);
    CHECK(line_force.points[3].second < 1e-4);
    CHECK(curvature_in_middle.points[3].second < 1e-4);
    CHECK(spans[0].points.back().second < 1e-4);
}
