#include "solver/shell/shell_energy.h"
#include "solver/stability/lowest_modes.h"
#include "tests/verification/plate.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <string>

// Buckling of an endless ribbon under tension and twist: along its middle, where the twist shortens it (Green 1937; Chopin and
// Kudrolli 2013), or across (Chopin, Demery and Davidovitch 2015). A piece of the ribbon stands for all of it: its end is its
// begin, moved along the axis and turned about it. The tables are in units of the width W and E t; eta = twist times W.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 100, youngs_force = 1000;

struct Ribbon {
    double poisson, thickness, tension;  // [-], [mm], [N/mm]

    Section section() const {
        const double plane = youngs_force / (1 - poisson * poisson);
        return thin_plate(thickness * thickness / 12 * orthotropic(plane, plane, poisson * plane, (1 - poisson) / 2 * plane),
                          thickness);
    }
};

Ribbon ribbon_of(const std::map<std::string, std::string>& row) {
    return {number(row, "nu"), number(row, "t/W") * width, number(row, "T/(E t W)") * youngs_force};
}

Patch piece(double length, int along, int across) {
    std::vector<double> breaks = equal_breaks(width, across);
    for (double& place : breaks) place -= width / 2;
    return {CubicBasis(equal_breaks(length, along)), CubicBasis(breaks)};
}

/// The last rows of control points are `sign` times the first ones, turned by `angle` about the axis; moved along it, too, if
/// `drawn` out: x of the last row's first point is then the unknown length.
void repeat_turned(Supports& supports, const Patch& patch, double angle, double sign, bool drawn) {
    const int last = patch.along.size() - 1;
    const Freedom drawn_to{patch.index(last, 0), x};
    const double c = sign * std::cos(angle), s = sign * std::sin(angle);
    for (int j = 0; j < patch.across.size(); ++j)
        for (int k = 0; k < 3; ++k) {
            std::vector<Supports::Weighted> along, across, up;
            for (int i = 0; i <= k; ++i) {
                const int p = patch.index(i, j);
                const double weight = repeated[k][i];
                along.push_back({{p, x}, sign * weight});
                across.insert(across.end(), {{{p, y}, weight * c}, {{p, z}, -weight * s}});
                up.insert(up.end(), {{{p, y}, weight * s}, {{p, z}, weight * c}});
            }
            if (drawn) along.push_back({drawn_to, 1});
            const int p = patch.index(last - k, j);
            if (!drawn || p != drawn_to.point) supports.tie({p, x}, along);
            supports.tie({p, y}, across);
            supports.tie({p, z}, up);
        }
}

/// A surface over material (along, across).
using Surface = std::function<Eigen::Vector3d(double, double)>;

/// The helicoid with its contraction across: every section is a straight line, and so is the first, on which x = z = 0 is no
/// constraint but keeps the buckled shapes away.
Surface helicoid(const Ribbon& ribbon, const Patch& patch, double eta) {
    const double twist = eta / width, length = patch.along.end();
    Supports supports(patch.points());
    repeat_turned(supports, patch, twist * length, 1, true);
    for (int j = 0; j < patch.across.size(); ++j)
        for (const int c : {x, z}) supports.fix({patch.index(0, j), c}, 0);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, ribbon.section()));
    ControlPoints pull = ControlPoints::Zero(3, patch.points());
    pull(x, patch.index(patch.along.size() - 1, 0)) = ribbon.tension * width;
    system.add(std::make_shared<DeadLoad>(pull));
    const ControlPoints points = equilibrium(system, patch.follow([&](double s, double v) {
        return Eigen::Vector3d(s, v * std::cos(twist * s), v * std::sin(twist * s));
    }));
    const double stretch = points(x, patch.index(patch.along.size() - 1, 0)) / length;
    return [=](double s, double v) {
        const double from_axis = patch.jet(points, 0, v).position.y();
        return Eigen::Vector3d(stretch * s, from_axis * std::cos(twist * s), from_axis * std::sin(twist * s));
    };
}

constexpr int across = 20;

/// Lowest eigenvalue of the helicoid for shapes that are repeated after `length` with the sign, which is half a wave of them or
/// the whole.
double lowest(const Ribbon& ribbon, double eta, double length, int spans, double sign) {
    const Surface surface = helicoid(ribbon, piece(4 * length / spans, 4, across), eta);
    const Patch patch = piece(length, spans, across);
    const ControlPoints points = patch.interpolate(surface);
    Supports supports(patch.points());
    repeat_turned(supports, patch, eta / width * length, sign, false);
    // Moving along the axis and turning about it cost nothing.
    if (sign > 0)
        for (const int c : {x, z}) supports.fix({0, c}, 0);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, ribbon.section()));
    return lowest_modes(system, points, 2).at(0).value;
}

/// Lowest eigenvalue of a piece whose first and last sections are held on the helicoid, free to turn about themselves.
double lowest_between_held_ends(const Ribbon& ribbon, double eta, double length, int spans) {
    const Surface surface = helicoid(ribbon, piece(4 * length / spans, 4, across), eta);
    const Patch patch = piece(length, spans, across);
    const ControlPoints points = patch.interpolate(surface);
    Supports supports(patch.points());
    for (int j = 0; j < patch.across.size(); ++j)
        for (const int p : {patch.index(0, j), patch.index(patch.along.size() - 1, j)})
            for (const int c : {x, y, z}) supports.fix({p, c}, points(c, p));
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, ribbon.section()));
    return lowest_modes(system, points, 2).at(0).value;
}

constexpr int per_half_wave = 8;  // spans

/// Twist eta at which the endless ribbon wrinkles with the wavelength; sought about `expected`.
double wrinkling_twist(const Ribbon& ribbon, double wavelength, double expected) {
    return crossing([&](double eta) { return lowest(ribbon, eta, wavelength / 2, per_half_wave, -1); }, 0.9 * expected,
                    1.05 * expected);
}

std::string conditions_of(const std::map<std::string, std::string>& row) {
    return "nu = " + row.at("nu") + ", t/W = " + row.at("t/W") + ", T/(E t W) = " + row.at("T/(E t W)");
}

}  // namespace

TEST_CASE("an endless twisted ribbon wrinkles along its middle at the twist of the second variation") {
    const ReferenceTable table = reference_table("ribbon_longitudinal_threshold_exactKL.csv");
    for (const auto& row : table.rows) {
        const double expected = number(row, "eta_c");
        check("twist eta at wrinkling",
              {expected, "-", table.source, Kind::other_method, conditions_of(row), 2e-4,
               "16 x 20 spans to a wave and four digits of the wavelength"},
              wrinkling_twist(ribbon_of(row), number(row, "lambda_c/W") * width, expected));
    }
}

TEST_CASE("a shallow plate with the curvature of the helicoid puts the wrinkles of a ribbon a little later") {
    const char* thickness = "0.002";
    const ReferenceTable table = reference_table("ribbon_longitudinal_threshold.csv").where("t/W", thickness);
    const std::string picture = "Wrinkles along an endless twisted ribbon, nu = 0.3, t/W = " + std::string(thickness);
    const std::string x_label = "T/(E t W)", y_label = "eta = twist times W";
    Curve shallow{picture, "shallow plate", x_label, y_label, {}, true, true}, exact = shallow;
    Curve ours{picture, "shell", x_label, y_label, {}, false, true}, slack = ours;
    exact.name = "second variation";
    slack.name = "slack in the middle, sqrt(24 T/(E t W))";
    for (const auto& row : table.rows) {
        const double expected = number(row, "eta_c = theta W/L"), tension = number(row, "T/(E t W)");
        const double eta = wrinkling_twist(ribbon_of(row), number(row, "lambda_c/W") * width, expected);
        check("twist eta at wrinkling",
              {expected, "-", table.source, Kind::other_method, conditions_of(row), 0.03 * expected * expected,
               "the shallow plate neglects eta^2 beside 1; the second variation, met to 2e-4, tells as much"},
              eta);
        shallow.points.emplace_back(tension, expected);
        ours.points.emplace_back(tension, eta);
        slack.points.emplace_back(tension, std::sqrt(24 * tension));
    }
    for (const auto& row : reference_table("ribbon_longitudinal_threshold_exactKL.csv").where("t/W", thickness).rows)
        exact.points.emplace_back(number(row, "T/(E t W)"), number(row, "eta_c"));
    for (const Curve& curve : {shallow, exact, ours, slack}) draw(curve);
}

TEST_CASE("of all wavelengths a twisted ribbon wrinkles first with the one of the second variation") {
    const ReferenceTable table = reference_table("ribbon_longitudinal_threshold_exactKL.csv");
    const auto& row = table.rows.at(0);
    const double critical = number(row, "lambda_c/W");
    Curve ours{"Wrinkles along a twisted ribbon by wavelength, " + conditions_of(row), "shell", "wavelength / W", "eta", {}};
    for (const double share : {0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.4})
        ours.points.emplace_back(share * critical,
                                 wrinkling_twist(ribbon_of(row), share * critical * width, number(row, "eta_c")));
    draw(ours);
    draw({ours.picture, "second variation", ours.x_label, ours.y_label, {{critical, number(row, "eta_c")}}, true});
    for (const std::size_t k : {2, 4}) CHECK(ours.points[3].second < ours.points[k].second);
}

TEST_CASE("held ends of a twisted ribbon put its wrinkles off by less the longer it is") {
    // Ends that are held on straight lines also keep the ribbon from buckling across, which an endless one does before.
    const ReferenceTable table = reference_table("ribbon_longitudinal_threshold_exactKL.csv");
    const auto& row = table.rows.at(0);
    const double endless = number(row, "eta_c"), wavelength = number(row, "lambda_c/W") * width;
    Curve ours{
        "Wrinkles along a twisted ribbon between held ends, " + conditions_of(row), "shell", "length / wavelength", "eta", {}};
    for (const int waves : {1, 2, 4}) {
        const double eta = crossing(
            [&](double twist) {
                return lowest_between_held_ends(ribbon_of(row), twist, waves * wavelength, 2 * per_half_wave * waves);
            },
            0.98 * endless, 1.02 * endless);
        check("twist eta at wrinkling between held ends, " + std::to_string(waves) + " waves long",
              {endless, "-", table.source, Kind::other_method, conditions_of(row) + ", endless", 6e-3 / waves,
               "the ends hold the wrinkles down; 5e-3 on one wave, less on more"},
              eta);
        ours.points.emplace_back(waves, eta);
    }
    draw(ours);
    draw({ours.picture, "endless, second variation", ours.x_label, ours.y_label, {{1, endless}, {4, endless}}, true});
}

TEST_CASE("an endless twisted ribbon buckles across at the twist of the second variation") {
    const ReferenceTable table = reference_table("ribbon_transverse_k0_exactKL.csv");
    for (const auto& row : table.rows) {
        const double expected = number(row, "eta_c");
        const auto value = [&](double eta) { return lowest(ribbon_of(row), eta, width / 10, 4, 1); };
        check("twist eta at buckling across",
              {expected, "-", table.source, Kind::other_method, conditions_of(row) + ", the same all along", 2e-4,
               "20 spans across, five digits of the table"},
              crossing(value, 0.8 * expected, 1.1 * expected));
    }
}
