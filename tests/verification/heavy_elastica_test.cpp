#include "mesh/graded_breaks.h"
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
#include <vector>

// A strip that sags under its own weight q per area, its length L and bending stiffness B joined in G = q L^3/B: clamped at one
// end, or hung at both as in the test of transverse flexibility (troughability) of a belt, F the sag of the middle. The ends of
// the hung strip carry vertical forces alone and are free to come together. No Poisson effect, so B = D.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double length = 1000, bending = 1e4, membrane = 2e5, width = 20;
const char* exact = "six digits of the table, stretch of up to 1e-5";

double weight(double G) {
    return G * bending / std::pow(length, 3);
}

/// From the clamp or from the middle, where boundary layers are, to the end.
Patch heavy_strip(double end) {
    return strip(graded_breaks(0, end, end / 60, {{0, end / 200, end / 20, 0.05}}, {}), width);
}

System under_weight(const Patch& patch, Supports supports, double G) {
    keep_plane(supports, patch);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(membrane, bending)));
    system.add(std::make_shared<DeadLoad>(area_load(patch, {0, 0, -weight(G)})));
    return system;
}

System cantilever(const Patch& patch, double G) {
    Supports supports(patch.points());
    clamp_begin(supports, patch);
    return under_weight(patch, supports, G);
}

/// Half of it, from the middle at x = 0.
System hung(const Patch& patch, double G) {
    Supports supports(patch.points());
    mirror_begin(supports, patch);
    for (int j = 0; j < patch.across.size(); ++j) supports.fix({patch.index(patch.along.size() - 1, j), z}, 0);
    return under_weight(patch, supports, G);
}

/// The strip hardly stretches, so Newton goes along a narrow valley: many short steps, each of a millisecond.
ControlPoints next_equilibrium(const System& system, const ControlPoints& start) {
    NewtonSettings settings;
    settings.iterations = 1000;
    return equilibrium(system, start, settings);
}

double sag_of(const Patch& patch, const ControlPoints& points) {
    return -place(patch, points, 0).z() / length;
}

/// The table backwards: G of a sag F/L. The ratio c = (F/L)/(5 G/384) to the linear sag is smooth and 1 for no sag: cubics
/// through four rows next to the given one.
class Inverse {
  public:
    explicit Inverse(const ReferenceTable& table) {
        for (const auto& row : table.rows) {
            const double F = number(row, "F/L");
            sags_.push_back(F);
            ratios_.push_back(F / (5 * number(row, "q L^3/B") / 384));
        }
    }
    double load_of(double sag) const { return 384 * sag / (5 * ratio(sag)); }

  private:
    double ratio(double sag) const {
        const int above = static_cast<int>(std::upper_bound(sags_.begin(), sags_.end(), sag) - sags_.begin());
        const int first = std::clamp(above - 2, 0, static_cast<int>(sags_.size()) - 4);
        double sum = 0;
        for (int i = first; i < first + 4; ++i) {
            double share = 1;
            for (int k = first; k < first + 4; ++k)
                if (k != i) share *= (sag - sags_[k]) / (sags_[i] - sags_[k]);
            sum += share * ratios_[i];
        }
        return sum;
    }
    std::vector<double> sags_, ratios_;
};

Reference elastica(const std::map<std::string, std::string>& row, const char* column, const char* unit,
                   const ReferenceTable& table, double tolerance, const char* why) {
    return {number(row, column), unit, table.source, Kind::other_method, "q L^3/B = " + row.at("q L^3/B"), tolerance, why};
}

}  // namespace

TEST_CASE("a heavy cantilever hangs as the elastica does") {
    const ReferenceTable table = reference_table("heavy_elastica_cantilever.csv");
    const Patch patch = heavy_strip(length);
    ControlPoints points = flat(patch);
    ComparedCurve drops("Heavy cantilever: drop of the tip", "drop / L", "q L^3/B", "drop / L");
    for (const auto& row : table.rows) {
        const double G = number(row, "q L^3/B");
        const System system = cantilever(patch, G);
        points = next_equilibrium(system, points);
        const Eigen::Vector3d tip = place(patch, points, length) / length;
        check("tip x/L", elastica(row, "x_tip/L", "-", table, 1e-5, exact), tip.x());
        check("drop/L", elastica(row, "drop/L", "-", table, 5e-5, exact), -tip.z());
        check("tip angle", elastica(row, "tip_angle_deg", "deg", table, 1e-5, exact),
              -turn(patch, points, length) * 180 / std::numbers::pi);
        check("root moment M L/B", elastica(row, "kappa_root L", "-", table, 5e-5, exact),
              clamp_moment(system, points) / width * length / bending);
        drops.add(G, number(row, "drop/L"), -tip.z());
    }
    drops.draw_both();
}

TEST_CASE("a heavy strip hung at both ends sags as the elastica does") {
    const ReferenceTable table = reference_table("heavy_elastica_two_ends_troughability.csv");
    const Patch patch = heavy_strip(length / 2);
    ControlPoints points = flat(patch);
    const std::string picture = "Strip hung at both ends: transverse flexibility F/L";
    ComparedCurve sags(picture, "F/L", "q L^3/B", "F/L");
    Curve linear{picture, "linear, 5 q L^3/(384 B)", "q L^3/B", "F/L", {}, false, true};
    for (const auto& row : table.rows) {
        const double G = number(row, "q L^3/B");
        points = next_equilibrium(hung(patch, G), points);
        check("F/L", elastica(row, "F/L", "-", table, 5e-5, exact), sag_of(patch, points));
        const double chord = 2 * place(patch, points, length / 2).x() / length;
        check("chord/L", elastica(row, "chord/L", "-", table, 1e-5, exact), chord);
        check("end angle", elastica(row, "end_angle_deg", "deg", table, 1e-5, exact),
              turn(patch, points, length / 2) * 180 / std::numbers::pi);
        check("curvature at the middle, kappa L",
              elastica(row, "kappa_centre L", "-", table, 5e-4, "second derivative at a knot"),
              curvature(patch, points, 0) * length);
        sags.add(G, number(row, "F/L"), sag_of(patch, points));
        linear.points.emplace_back(G, 5 * G / 384);
    }
    sags.draw_both();
    draw(linear);
}

TEST_CASE("the bending stiffness across a belt follows from its sag hung at both ends") {
    // The sags of 0.08 to 0.30 of the length that belts have in the test, between the rows of the table.
    const ReferenceTable table = reference_table("heavy_elastica_two_ends_troughability.csv");
    const Inverse inverse(table);
    const Patch patch = heavy_strip(length / 2);
    ControlPoints points = flat(patch);
    Curve ours{"Stiffness from the sag of a hung strip", "from the shell's own sag", "F/L", "B found / B given", {}};
    for (const double G : {6.4, 8.0, 12.0, 17.0, 23.0, 26.0, 35.0, 43.0}) {
        points = next_equilibrium(hung(patch, G), points);
        const double sag = sag_of(patch, points), found = weight(G) * std::pow(length, 3) / inverse.load_of(sag);
        ours.points.emplace_back(sag, found / bending);
        check("B from F/L",
              {bending, "N mm", table.source, Kind::other_method, "F/L = " + std::to_string(sag), 2e-4,
               "cubic between the rows; a sag off by 1e-4 is a stiffness off by up to 2.5e-4"},
              found);
    }
    draw(ours);
}
