#include "tests/verification/compared_curve.h"
#include "tests/verification/plate.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <vector>

// Buckling of flat plates: the load at which the lowest eigenvalue of the tangent is zero. The state before is flat with a
// uniform force, so the control points are put where it has them. Laminates whose bending is coupled to their stretch (B != 0)
// are left out: the section law carries no B.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double width = 100, pi = std::numbers::pi;
/// So thin that the plate buckles at a strain of some 1e-5; the worst of the tables, shear with D11/D22 = 50, at 4e-4.
constexpr double thickness = 0.05;
const Eigen::Vector3d compression{-1, 0, 0}, shear{0, 0, 1};

const std::map<std::string, Edges> edges_of{
    {"compression x SSSS", all_simple},
    {"compression x CCCC", all_clamped},
    {"compression x, loaded SS, sides clamped", {Edge::simple, Edge::simple, Edge::clamped, Edge::clamped}},
    {"compression x, loaded SS, one side SS one free", {Edge::simple, Edge::simple, Edge::simple, Edge::free}},
    {"compression x, sides free", {Edge::simple, Edge::simple, Edge::free, Edge::free}},
    {"shear SSSS", all_simple},
    {"shear CCCC", all_clamped},
};

/// D of a table counts in this [N mm], so that the plate is as stiff as a belt.
constexpr double belt_like = 1e5;

/// Buckling force [N/mm] as N b^2/pi^2 [N mm].
double coefficient(const Patch& patch, const Eigen::Matrix3d& bending, const Supports& height,
                   const Eigen::Vector3d& direction) {
    // Factors of order one; b is the width.
    const double unit = belt_like * pi * pi * std::sqrt(bending(0, 0) * bending(1, 1)) / (width * width);
    const double factor = buckling_factor(patch, thin_plate(belt_like * bending, thickness), height, unit * direction);
    return factor * unit * width * width / (belt_like * pi * pi);
}

double coefficient(const Patch& patch, const Eigen::Matrix3d& bending, const Edges& edges, const Eigen::Vector3d& direction) {
    Supports height(patch.points());
    hold_height(height, patch, edges);
    return coefficient(patch, bending, height, direction);
}

void check_finite_plates(const std::string& load, const Eigen::Vector3d& direction, double tolerance, const char* why) {
    const ReferenceTable table = reference_table("plate_buckling_finite.csv");
    for (const auto& row : table.rows) {
        const std::string& edges = row.at("load_and_edges");
        if (!edges.starts_with(load)) continue;
        const double length = number(row, "a_over_b") * width;
        const Patch patch = plate(length, width, length > 2 * width ? 48 : 24, 16);
        check("N b^2/pi^2, " + edges,
              {number(row, "k = N_cr b^2/pi^2 (D as given)"), "N mm", table.source, Kind::other_method,
               row.at("case") + ", a/b = " + row.at("a_over_b"), tolerance, why},
              coefficient(patch, bending_of(row), edges_of.at(edges), direction));
    }
}

}  // namespace

TEST_CASE("a finite plate buckles under compression as by Ritz") {
    check_finite_plates("compression", compression, 2e-4, "16 spans across and 12 or more to the width along");
}

TEST_CASE("a finite plate buckles under shear as by Ritz") {
    check_finite_plates("shear", shear, 5e-4, "spans as for compression, a shear strain of up to 1e-4 before buckling");
}

TEST_CASE("a symmetric laminate on four edges buckles under compression as Navier's solution does") {
    const ReferenceTable table = reference_table("plate_buckling_uniaxial_laminates.csv");
    for (const auto& row : table.rows) {
        const std::vector<int> plies = symmetric_plies(row.at("layup"));
        if (plies.empty()) continue;
        // Six spans or more to the half-wave.
        const Patch patch = plate(number(row, "a_over_b") * width, width, std::max(16, 6 * std::stoi(row.at("m"))), 12);
        const double measured = pi * pi * coefficient(patch, cross_ply_bending(plies), all_simple, compression);
        check("N b^2/(E2 h^3)",
              {number(row, "N_x b^2/(E2 h^3)"), "-", table.source, Kind::closed_form,
               row.at("layup") + ", a/b = " + row.at("a_over_b"), 2e-4, "six spans to the half-wave, strain of 1e-5"},
              measured);
    }
}

TEST_CASE("the buckling load of a square plate converges from above with the fourth power of the span") {
    // Cubic splines, energy of second derivatives: an eigenvalue's error goes with h^(2 (3 + 1 - 2)) (Strang and Fix, An
    // Analysis of the Finite Element Method, ch. 6). N b^2/(pi^2 D) = 4 for one half-wave each way.
    const Eigen::Matrix3d isotropic = orthotropic(1, 1, 0.3, 0.35);
    Curve ours{
        "Buckling of a square plate: error by spans", "compression, SSSS", "spans a side", "error of N", {}, false, true};
    const auto add = [&](int spans) {
        const Patch patch = plate(width, width, spans, spans);
        ours.points.emplace_back(spans, coefficient(patch, isotropic, all_simple, compression) / 4 - 1);
    };
    for (const int spans : {2, 4, 8, 16}) add(spans);
    draw(ours);
    check("order of convergence, 8 to 16 spans a side",
          {4, "-", "Strang and Fix", Kind::closed_form, "isotropic, SSSS, compression", 0.05, "the order is that of h -> 0"},
          std::log2(ours.points[2].second / ours.points[3].second));
}

// A half-wave of an endless plate between simply supported loaded edges is the endless plate.
TEST_CASE("a long plate buckles under compression in the half-wave and at the load of Lekhnitskii and Ritz") {
    const std::map<std::string, Edge> left{{"SS", Edge::simple}, {"CC", Edge::clamped}, {"SF", Edge::free}};
    const ReferenceTable table = reference_table("plate_compression_long_ortho.csv");
    for (const auto& row : table.rows) {
        const std::string& sides = row.at("sides");
        const Edges edges{Edge::simple, Edge::simple, sides == "CC" ? Edge::clamped : Edge::simple, left.at(sides)};
        const Patch patch = plate(number(row, "half_wavelength_over_b") * width, width, 16, 16);
        const double measured = pi * pi * coefficient(patch, bending_of(row), edges, compression);
        const std::string conditions =
            "D11 " + row.at("D11") + ", D22 " + row.at("D22") + ", D12 " + row.at("D12") + ", D66 " + row.at("D66");
        check("N b^2, sides " + sides,
              {number(row, "N_cr b^2 (Ritz)"), "N mm", table.source, Kind::other_method, conditions, 1e-4, "16 x 16 spans"},
              measured);
    }
}

// The table's wavelengths are those of D22 = 1 and, for theta = sqrt(D11 D22)/H < 1, H = 1, D11 = theta^2; else D11 = 1, H =
// 1/theta. The sides are held, so H = D12 + 2 D66 alone counts.
TEST_CASE("an endless plate buckles under shear at the load of Seydel") {
    const ReferenceTable table = reference_table("plate_shear_buckling_long_ortho.csv");
    const std::string picture = "Shear buckling of endless orthotropic plates";
    for (const auto& [edges, held] :
         {std::pair{"simply supported long edges", Edge::simple}, {"clamped long edges", Edge::clamped}}) {
        ComparedCurve loads(picture, edges, "theta = sqrt(D11 D22)/H", "C2");
        for (const auto& row : table.where("edges", edges).rows) {
            const double theta = number(row, "theta");
            if (theta == 0 || theta > 1e3) continue;  // D11 = 0 or H = 0 are no plates
            const double H = std::min(1.0, 1 / theta), D11 = std::min(1.0, theta * theta);
            const Patch patch = plate(number(row, "full_wavelength_over_b (for the D ratios used)") * width, width, 16, 14);
            Supports height(patch.points());
            repeat_height(height, patch, held);
            const double force = pi * pi * coefficient(patch, orthotropic(D11, 1, 0, H / 2), height, shear);
            loads.add(theta, number(row, "C2"), force / (4 * std::sqrt(H)));
            check("C2 = N b^2/(4 sqrt(D22 H)), " + std::string(edges),
                  {number(row, "C2"), "-", table.source, Kind::other_method, "theta = " + row.at("theta"), 3e-4,
                   "16 x 14 spans for one wave"},
                  force / (4 * std::sqrt(H)));
        }
        loads.draw_both();
    }
}

TEST_CASE("plates buckle under shear at less the longer they are and tend to the endless plate") {
    const Eigen::Matrix3d isotropic = orthotropic(1, 1, 0.3, 0.35);
    const ReferenceTable finite = reference_table("plate_buckling_finite.csv").where("case", "isotropic nu=0.3");
    const ReferenceTable endless = reference_table("plate_shear_buckling_long_ortho.csv").where("theta", "1");
    const std::string picture = "Shear buckling of isotropic plates", x_label = "a/b", y_label = "N b^2/(pi^2 D)";
    for (const auto& [edges, sides] :
         {std::pair{"shear SSSS", "simply supported long edges"}, {"shear CCCC", "clamped long edges"}}) {
        const ReferenceTable ritz = finite.where("load_and_edges", edges);
        Curve published{picture, edges + std::string(", Ritz"), x_label, y_label, {}, true};
        for (const auto& row : ritz.rows)
            published.points.emplace_back(number(row, "a_over_b"), number(row, "k = N_cr b^2/pi^2 (D as given)"));
        Curve ours{picture, edges, x_label, y_label, {}};
        for (const double length : {1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0, 6.0, 10.0})
            ours.points.emplace_back(length, coefficient(plate(length * width, width, 8 + static_cast<int>(8 * length), 12),
                                                         isotropic, edges_of.at(edges), shear));
        const double limit = 4 * number(endless.where("edges", sides).rows.at(0), "C2") / (pi * pi);
        draw(published);
        draw(ours);
        draw({picture, sides + std::string(", endless"), x_label, y_label, {{1, limit}, {10, limit}}});
        for (std::size_t k = 1; k < ours.points.size(); ++k) CHECK(ours.points[k].second < ours.points[k - 1].second);
        check("N b^2/(pi^2 D) of a plate ten widths long, " + std::string(edges),
              {limit, "-", endless.source, Kind::other_method, "isotropic, endless", 1e-2,
               "the short edges still raise it, as (b/a)^2 = 1 %"},
              ours.points.back().second);
    }
}
