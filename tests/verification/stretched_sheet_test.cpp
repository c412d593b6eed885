#include "mesh/graded_breaks.h"
#include "solver/shell/shell_energy.h"
#include "solver/stability/lowest_modes.h"
#include "tests/verification/plate.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <memory>
#include <numbers>
#include <string>

// A sheet stretched between two clamped ends, its long edges free: the clamps hold its width, so that some way off it is
// pressed together across and wrinkles along the pull. Linear plane stress and Kirchhoff plate of Hooke's law; the nonlinear
// sheet tends to it for t/W -> 0. Wrinkles even and odd in y come at almost the same stretch.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 100;

struct Sheet {
    double poisson, across, shear;  // nu_xy, E_y/E_x, G/E_x
    double length, thickness;

    Section section() const {
        const double share = 1 - poisson * poisson * across;
        return thin_plate(1e4 * orthotropic(1 / share, across / share, poisson * across / share, shear), thickness);
    }
    double youngs_force() const { return 12e4 / (thickness * thickness); }  // E_x t [N/mm]
};

Sheet sheet_of(const std::map<std::string, std::string>& row, double thickness) {
    const double poisson = number(row, "nu"), length = number(row, "L/W") * width;
    Sheet sheet{poisson, 1, 1 / (2 * (1 + poisson)), length, thickness};
    std::sscanf(row.at("material").c_str(), "ortho Ey/Ex=%lf G/Ex=%lf", &sheet.across, &sheet.shear);
    return sheet;
}

/// One half, from mid-length at x = 0 to the clamp, where the corners' stress wants short spans.
Patch half_sheet(const Sheet& sheet, int across) {
    const double half = sheet.length / 2;
    return {CubicBasis(graded_breaks(0, half, width / 18, {{half, width / 80, 0, 0.15}}, {})),
            CubicBasis(equal_breaks(width, across))};
}

/// In the plane: mirrored at mid-length; at the clamp moved along and as wide as unstretched.
ControlPoints stretched(const Patch& patch, const Sheet& sheet, double strain) {
    const int last = patch.along.size() - 1;
    const std::vector<double> places = patch.across.greville();
    Supports supports(patch.points());
    for (int p = 0; p < patch.points(); ++p) supports.fix({p, z}, 0);
    for (int j = 0; j < patch.across.size(); ++j) {
        supports.fix({patch.index(0, j), x}, 0);
        supports.tie({patch.index(1, j), y}, {{{patch.index(0, j), y}, 1}});
        supports.fix({patch.index(last, j), x}, sheet.length / 2 * (1 + strain));
        supports.fix({patch.index(last, j), y}, places[j]);
    }
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, sheet.section()));
    return equilibrium(system, flat(patch));
}

/// Force along at mid-length over the width [N/mm].
double mean_force(const Patch& patch, const ControlPoints& points, const Sheet& sheet) {
    ControlPoints gradient = ControlPoints::Zero(3, patch.points());
    ShellEnergy(patch, sheet.section()).add_gradient(points, gradient);
    return -gradient.row(x).head(patch.across.size()).sum() / width;
}

/// Membrane force across in the middle of the sheet [N/mm].
double force_across(const Patch& patch, const ControlPoints& points, const Sheet& sheet) {
    const SurfaceJet jet = patch.jet(points, 0, width / 2);
    const Eigen::Vector3d strain((jet.along.squaredNorm() - 1) / 2, (jet.across.squaredNorm() - 1) / 2,
                                 jet.along.dot(jet.across));
    return sheet.section().membrane.row(1) * strain;
}

/// Lowest eigenvalues of wrinkles that are even and odd in y.
struct Lowest {
    double even = 1, odd = 1;
};

/// +1 for a shape even in y, -1 for an odd one.
double parity(const Patch& patch, const ControlPoints& shape) {
    double product = 0;
    for (int i = 0; i < patch.along.size(); ++i)
        for (int j = 0; j < patch.across.size(); ++j)
            product += shape(z, patch.index(i, j)) * shape(z, patch.index(i, patch.across.size() - 1 - j));
    return product / shape.row(z).squaredNorm();
}

/// Of the height alone: a flat sheet's tangent does not couple height and plane. Even about mid-length.
Lowest lowest_wrinkles(const Patch& patch, const Sheet& sheet, const ControlPoints& points) {
    const int last = patch.along.size() - 1;
    Supports height(patch.points());
    for (int j = 0; j < patch.across.size(); ++j) {
        height.tie({patch.index(1, j), z}, {{{patch.index(0, j), z}, 1}});
        for (const int i : {last - 1, last}) height.fix({patch.index(i, j), z}, 0);
    }
    hold_in_plane(height, patch, points);
    height.close();
    System system(patch, height);
    system.add(std::make_shared<ShellEnergy>(patch, sheet.section()));
    Lowest lowest;
    for (const EigenMode& mode : lowest_modes(system, points, 6)) {
        const double side = parity(patch, height.expand(mode.shape));
        // Where both come within the eigensolver's tolerance a mode may be a mixture: its value is then that of both.
        if (side > -0.99) lowest.even = std::min(lowest.even, mode.value);
        if (side < 0.99) lowest.odd = std::min(lowest.odd, mode.value);
    }
    return lowest;
}

/// Stretch and mean force at the first wrinkles of each symmetry.
struct Threshold {
    double even, odd;               // strain of the length
    double force, force_of_higher;  // [N/mm]
    double force_across;            // in the middle at the first [N/mm]
};

Threshold threshold_of(const Sheet& sheet, const Patch& patch, double expected) {
    const auto at = [&](double strain) { return stretched(patch, sheet, strain); };
    const auto first = [&](double Lowest::*side) {
        return crossing([&](double strain) { return lowest_wrinkles(patch, sheet, at(strain)).*side; }, 0.8 * expected,
                        1.1 * expected);
    };
    const double even = first(&Lowest::even), odd = first(&Lowest::odd);
    const ControlPoints points = at(std::min(even, odd));
    return {even, odd, mean_force(patch, points, sheet), mean_force(patch, at(std::max(even, odd)), sheet),
            force_across(patch, points, sheet)};
}

constexpr double thin = 5e-5;  // t/W

void check_sheet(const std::map<std::string, std::string>& row, const ReferenceTable& table, int across) {
    const Sheet sheet = sheet_of(row, thin * width);
    const double eps = number(row, "eps_cr (W/t)^2 nominal end strain");
    const Threshold found = threshold_of(sheet, half_sheet(sheet, across), eps * thin * thin);
    const std::string conditions = row.at("material") + ", nu = " + row.at("nu") + ", L/W = " + row.at("L/W") + ", t/W = 5e-5";
    const auto compare = [&](const std::string& quantity, const char* column, double tolerance, double measured) {
        check(quantity,
              {number(row, column), "-", table.source, Kind::other_method, conditions, tolerance,
               "mesh error of the table some 1e-3, ours up to 3e-3; a stretch of up to 1e-3"},
              measured);
    };
    const double strain = std::min(found.even, found.odd);
    const double unit = std::pow(std::numbers::pi / width, 2) * sheet.section().bending(0, 0);
    compare("mean stress / (E strain)", "sigma_mean/(E_x eps_mean)", 1e-3, found.force / (sheet.youngs_force() * strain));
    if (number(row, "distance of min from clamp /W") == number(row, "L/W") / 2)
        compare("stress across at the centre / mean stress", "min sigma_yy/sigma_mean on centreline", 5e-3,
                found.force_across / found.force);
    compare("strain at the first wrinkles, eps (W/t)^2", "eps_cr (W/t)^2 nominal end strain", 4e-3, strain / (thin * thin));
    compare("force at the first wrinkles, N W^2/(pi^2 D)", "k: N_cr W^2/(pi^2 D11)", 4e-3, found.force / unit);
    compare("the same of the other symmetry", "k of other y-parity", 4e-3, found.force_of_higher / unit);
}

ReferenceTable of_material(const ReferenceTable& table, const std::string& material, const std::string& poisson) {
    return table.where("material", material).where("nu", poisson);
}

}  // namespace

TEST_CASE("a sheet stretched between clamps wrinkles at the strain of linear buckling and both symmetries are found") {
    const ReferenceTable table = reference_table("stretched_sheet_linear_buckling.csv");
    check_sheet(of_material(table, "isotropic", "0.5").where("L/W", "2.0").rows.at(0), table, 48);
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("the longer and the stiffer and the orthotropic stretched sheet wrinkle at the strain of linear buckling") {
    const ReferenceTable table = reference_table("stretched_sheet_linear_buckling.csv");
    for (const char* length : {"2.5", "3.0"})
        check_sheet(of_material(table, "isotropic", "0.5").where("L/W", length).rows.at(0), table, 48);
    check_sheet(of_material(table, "isotropic", "0.3").where("L/W", "2.0").rows.at(0), table, 72);
    check_sheet(of_material(table, "ortho Ey/Ex=2 G/Ex=0.3 nu_xy=0.3", "0.3").where("L/W", "2.0").rows.at(0), table, 72);
}

TEST_CASE("a stretched sheet tends to linear buckling as it gets thinner") {
    const ReferenceTable table = reference_table("stretched_sheet_linear_buckling.csv");
    const auto row = of_material(table, "isotropic", "0.5").where("L/W", "2.0").rows.at(0);
    const double limit = number(row, "eps_cr (W/t)^2 nominal end strain");
    const std::string picture = "Wrinkles of a stretched sheet, nu = 0.5, L/W = 2", x_label = "t/W", y_label = "eps (W/t)^2";
    Curve ours{picture, "shell", x_label, y_label, {}};
    for (const double thickness : {5e-5, 1e-4, 2e-4, 4e-4, 6e-4}) {
        const Sheet sheet = sheet_of(row, thickness * width);
        const double square = thickness * thickness;
        const Threshold found = threshold_of(sheet, half_sheet(sheet, 48), limit * square);
        ours.points.emplace_back(thickness, std::min(found.even, found.odd) / square);
    }
    draw(ours);
    draw({picture, "linear buckling", x_label, y_label, {{0, limit}, {6e-4, limit}}, true});
    for (std::size_t k = 1; k < ours.points.size(); ++k)
        CHECK(std::abs(ours.points[k - 1].second - limit) < std::abs(ours.points[k].second - limit));
}
#endif
