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
#include <string>

// Span of a belt under tension T and its weight q: D w'''' - T w'' = q (Timoshenko, Strength of Materials, part II). Between
// clamped ends, and as well between rollers in a row of equal spans, with lambda = L sqrt(T/D):
//   support moment  M = q L^2 ((lambda/2) coth(lambda/2) - 1)/lambda^2,
//   sag             w = q L^2/(8 T) - q L^2 tanh(lambda/4)/(2 T lambda).

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

struct Span {
    double length, tension, bending, load;  // [mm], [N/mm], [N mm], [N/mm^2]
    double lambda() const { return length * std::sqrt(tension / bending); }
    double layer() const { return std::sqrt(bending / tension); }
    double support_moment() const {
        return load * length * length * (lambda() / 2 / std::tanh(lambda() / 2) - 1) / (lambda() * lambda());
    }
    double sag() const { return load * length * length / tension * (0.125 - std::tanh(lambda() / 4) / (2 * lambda())); }
};

constexpr double width = 20;
/// The closed form has no stretch.
constexpr double stretch = 1e-5;

Reference beam(double value, const char* unit, double tolerance, const char* why) {
    return {value, unit, "tensioned beam", Kind::closed_form, "nu = 0, small slopes", tolerance, why};
}

/// From the support or roller to mid-span: no slope at either end, the far one pulled along x.
System half_span(const Patch& patch, const Span& span, Supports supports) {
    const int last = patch.along.size() - 1;
    for (int j = 0; j < patch.across.size(); ++j) {
        supports.tie({patch.index(last, j), z}, {{{patch.index(last - 1, j), z}, 1}});
        if (j > 0) supports.tie({patch.index(last, j), x}, {{{patch.index(last, 0), x}, 1}});
    }
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(span.tension / stretch, span.bending)));
    system.add(std::make_shared<DeadLoad>(area_load(patch, {0, 0, -span.load})));
    system.add(std::make_shared<DeadLoad>(end_load(patch, {span.tension * width, 0, 0})));
    return system;
}

/// Holds the first section at x = 0 and the height, free to turn.
void hinge_begin(Supports& supports, const Patch& patch) {
    const std::vector<double> places = patch.across.greville();
    for (int j = 0; j < patch.across.size(); ++j)
        for (const int c : {x, y, z}) supports.fix({patch.index(0, j), c}, c == y ? places[j] : 0);
}

/// Of length 1000 mm with slopes of some 1e-4.
Span span_of(double lambda) {
    const double bending = 4e3, length = 1000, scale = bending / (length * length);
    return {length, lambda * lambda * scale, bending, 1e-2 * std::max(1.0, lambda * lambda / 10) * scale / length};
}

void check_span(const std::map<std::string, std::string>& row, const ReferenceTable& table, bool clamped, ComparedCurve& sags) {
    const char* lambda_column = "lambda = L sqrt(T/D)";
    const double lambda = number(row, lambda_column);
    const Span span = span_of(lambda);
    const double middle = span.length / 2, load = span.load;
    const Patch patch = strip(graded_breaks(0, middle, 10, {{0, span.layer() / 30, span.layer(), 0.2}}, {}), width);
    Supports supports(patch.points());
    clamped ? clamp_begin(supports, patch) : hinge_begin(supports, patch);
    const System system = half_span(patch, span, supports);
    const ControlPoints points = equilibrium(system, flat(patch));
    const std::string ends = clamped ? "clamped " : "ss ";
    const auto compare = [&](const std::string& column, double tolerance, const char* why, double measured) {
        check(ends + column,
              {number(row, ends + column), "-", table.source, Kind::closed_form, "L sqrt(T/D) = " + row.at(lambda_column),
               tolerance, why},
              measured);
    };
    const char* small = "stretch of 1e-5, slopes of up to 4e-4, last digit of the table";
    const double sag = -place(patch, points, middle).z() * span.bending / (load * std::pow(span.length, 4));
    const double unit = load * span.length * span.length;
    compare("w_mid D/(qL^4)", 5e-5, small, sag);
    compare("D w_xx(mid)/(qL^2)", 1e-3, "second derivative at the end of a span of 10 mm",
            -span.bending * curvature(patch, points, middle) / unit);
    if (clamped)
        compare("D w_xx(support)/(qL^2)", 1e-4, small, clamp_moment(system, points) / width / unit);
    else
        compare("end slope D/(qL^3)", 1e-4, small, -turn(patch, points, 0) * span.bending / (unit * span.length));
    sags.add(lambda, number(row, ends + "w_mid D/(qL^4)"), sag);
}

}  // namespace

TEST_CASE("a clamped span under tension sags and bends at its supports as the beam does") {
    for (const double lambda : {2.0, 10.0, 50.0}) {
        CAPTURE(lambda);
        Span span{1000, lambda * lambda * 0.004, 4e3, 0};
        span.load = 1e-4 * span.tension / span.length;  // slopes below 1e-4
        const Patch patch = strip(graded_breaks(0, 500, 30, {{0, span.layer() / 8, span.layer(), 0.2}}, {}), width);
        Supports supports(patch.points());
        clamp_begin(supports, patch);
        const System system = half_span(patch, span, supports);
        const ControlPoints points = equilibrium(system, flat(patch));
        check("sag", beam(span.sag(), "mm", 1e-5, "stretch 1e-6 to 1e-4 and slopes of 1e-4"), -place(patch, points, 500).z());
        check("clamp moment", beam(span.support_moment(), "N mm/mm", 1e-4, "stretch and slopes of 1e-4"),
              clamp_moment(system, points) / width);
        check("moment by curvature at the clamp",
              beam(span.support_moment(), "N mm/mm", 2e-3, "second derivative at a knot, (h^2 T/D)/12 = 1.3e-3"),
              -span.bending * curvature(patch, points, 0));
    }
}

TEST_CASE("clamped and simply supported spans sag and bend as the tensioned beam of the table") {
    const ReferenceTable table = reference_table("tensioned_span_closed_form.csv");
    for (const bool clamped : {true, false}) {
        ComparedCurve sags("Span under tension: sag", clamped ? "clamped" : "simply supported", "L sqrt(T/D)", "w D/(q L^4)");
        for (const auto& row : table.rows) check_span(row, table, clamped, sags);
        sags.draw_both();
    }
}

TEST_CASE("a belt on a row of rollers carries its weight by their pressure and bends over them as the beam does") {
    // A fabric belt on rollers 1200 mm apart; rubber of 2 N/mm^3 on the rollers, as on a conveyor.
    const Span span{1200, 25, 7e4, 16e-9 * 9806.65};
    constexpr double underside = 7, roll_radius = 76, foundation = 2;
    const Patch patch = strip(graded_breaks(0, 600, 40, {{0, 1.5, 6, 0.2}}, {}), width);
    const Roll roll{{0, 0, -roll_radius - underside}, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), roll_radius, 500, 5};
    const auto contact =
        std::make_shared<ContactEnergy>(patch, roll, ContactLaw{foundation, 1e-4}, underside, ContactWindow{0, 40, 0, width});
    Supports supports(patch.points());
    mirror_begin(supports, patch);
    System system = half_span(patch, span, supports);
    system.add(contact);
    const ControlPoints points = equilibrium(system, flat(patch));

    const double weight = span.load * span.length * width / 2;
    check("roller force", beam(weight, "N", 1e-6, "equilibrium"), contact->force(points).z());
    check("sag over the roller", beam(span.sag(), "mm", 1e-3, "slopes of 4e-3 and the width of the contact line"),
          place(patch, points, 0).z() - place(patch, points, 600).z());
    // The reaction F spreads over a parabola of half-width c, F = 2/3 k c^3/R: that takes F 3 c/16 from the moment under it.
    const double reaction = span.load * span.length, reach = std::cbrt(1.5 * reaction * (roll_radius + underside) / foundation);
    check(
        "moment over the roller",
        beam(span.support_moment() - 3.0 / 16 * reaction * reach, "N mm/mm", 5e-3, "own curvature of the belt in the contact"),
        -span.bending * curvature(patch, points, 0));
}
