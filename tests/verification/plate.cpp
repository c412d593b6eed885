#include "tests/verification/plate.h"

#include "mesh/quadrature.h"
#include "solver/shell/shell_energy.h"
#include "solver/shell/shell_point.h"
#include "solver/stability/lowest_modes.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>
#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <memory>

namespace swale::verification {

namespace {

enum { x, y, z };

// Symmetric stretch U with U^2 = 1 + 2 E of the Green strain E in Voigt order.
Eigen::Matrix2d stretch_of(const Eigen::Vector3d& strain) {
    Eigen::Matrix2d right;
    right << 1 + 2 * strain[0], strain[2], strain[2], 1 + 2 * strain[1];
    return Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(right).operatorSqrt();
}

int rows_held(Edge edge) {
    return edge == Edge::free ? 0 : edge == Edge::simple ? 1 : 2;
}

void scatter(const Patch& patch, const LinePoint& along, const LinePoint& across, double load, ControlPoints& forces) {
    for (int a = 0; a < 4; ++a)
        for (int b = 0; b < 4; ++b)
            forces(z, patch.index(along.basis.first + a, across.basis.first + b)) +=
                along.weight * across.weight * along.basis.value[a] * across.basis.value[b] * load;
}

}  // namespace

Section thin_plate(const Eigen::Matrix3d& bending, double thickness) {
    Section section;
    section.bending = bending;
    section.membrane = 12 / (thickness * thickness) * bending;
    return section;
}

Eigen::Matrix3d bending_of(const std::map<std::string, std::string>& row) {
    return orthotropic(number(row, "D11"), number(row, "D22"), number(row, "D12"), number(row, "D66"));
}

std::vector<int> symmetric_plies(const std::string& layup) {
    if (layup.front() != '[' || layup.back() != ']') return {};
    std::vector<int> plies;
    for (std::size_t from = 1; from < layup.size(); from = layup.find_first_of("/]", from) + 1)
        plies.push_back(std::stoi(layup.substr(from)));
    return std::equal(plies.begin(), plies.end(), plies.rbegin()) ? plies : std::vector<int>{};
}

Eigen::Matrix3d cross_ply_bending(const std::vector<int>& plies) {
    // Q11 = E1/(1 - nu12 nu21), Q22 = E2/(1 - nu12 nu21), Q12 = nu12 Q22, Q66 = G12; D = sum of Q (z_k^3 - z_(k-1)^3)/3.
    const double share = 1 - 0.25 * 0.25 / 25, Q11 = 25 / share, Q22 = 1 / share, Q12 = 0.25 * Q22, Q66 = 0.5;
    const double ply = 1.0 / static_cast<double>(plies.size());
    Eigen::Matrix3d bending = Eigen::Matrix3d::Zero();
    double below = -0.5;
    for (const int angle : plies) {
        const bool turned = angle == 90;
        const Eigen::Matrix3d Q = orthotropic(turned ? Q22 : Q11, turned ? Q11 : Q22, Q12, Q66);
        bending += Q * (std::pow(below + ply, 3) - std::pow(below, 3)) / 3;
        below += ply;
    }
    return bending;
}

Patch plate(double length, double width, int along, int across) {
    return {CubicBasis(equal_breaks(length, along)), CubicBasis(equal_breaks(width, across))};
}

void hold_height(Supports& supports, const Patch& patch, const Edges& edges) {
    const int along = patch.along.size(), across = patch.across.size();
    for (int i = 0; i < along; ++i)
        for (int j = 0; j < across; ++j)
            if (i < rows_held(edges.begin) || along - 1 - i < rows_held(edges.end) || j < rows_held(edges.right) ||
                across - 1 - j < rows_held(edges.left))
                supports.fix({patch.index(i, j), z}, 0);
}

void repeat_height(Supports& supports, const Patch& patch, Edge sides) {
    hold_height(supports, patch, {Edge::free, Edge::free, sides, sides});
    const int last = patch.along.size() - 1, held = rows_held(sides);
    for (int j = held; j < patch.across.size() - held; ++j)
        for (int k = 0; k < 3; ++k) {
            std::vector<Supports::Weighted> masters;
            for (int i = 0; i <= k; ++i) masters.push_back({{patch.index(i, j), z}, repeated[k][i]});
            supports.tie({patch.index(last - k, j), z}, masters);
        }
}

void hold_in_plane(Supports& supports, const Patch& patch, const ControlPoints& points) {
    for (int p = 0; p < patch.points(); ++p)
        for (const int c : {x, y}) supports.fix({p, c}, points(c, p));
}

ControlPoints prestressed(const Patch& patch, const Section& section, const Eigen::Vector3d& force) {
    const Eigen::Matrix2d stretch = stretch_of(section.membrane.inverse() * force);
    return patch.follow([&](double u, double v) {
        const Eigen::Vector2d place = stretch * Eigen::Vector2d(u, v);
        return Eigen::Vector3d(place[0], place[1], 0);
    });
}

DeadLoad pressure(const Patch& patch, const std::function<double(double, double)>& load) {
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    const LineRule along = gauss_rule(patch.along, 5), across = gauss_rule(patch.across, 5);
    for (const LinePoint& p : along.points)
        for (const LinePoint& q : across.points) scatter(patch, p, q, load(p.position, q.position), forces);
    return DeadLoad(forces);
}

Eigen::Vector3d moments(const Patch& patch, const ControlPoints& points, const Section& section, double u, double v) {
    const SurfaceJet jet = patch.jet(points, u, v);
    PointJet derivatives;
    derivatives << jet.along, jet.across, jet.along2, jet.across2, jet.mixed;
    return section.bending * point_strain(derivatives).curvature;
}

double crossing(const std::function<double(double)>& f, double from, double to) {
    double above = f(from), below = f(to);
    const double scale = std::abs(above);
    for (; below > 0; below = f(to)) {
        from = to;
        above = below;
        to *= 2;
        REQUIRE(to < 1e6);
    }
    // Regula falsi; an end that stays counts half (the Illinois rule).
    double at = to;
    for (int k = 0; k < 60; ++k) {
        at = (from * below - to * above) / (below - above);
        const double here = f(at);
        if (std::abs(here) < 1e-7 * scale) break;
        if (here > 0) {
            from = at;
            above = here;
            below /= 2;
        } else {
            to = at;
            below = here;
            above /= 2;
        }
    }
    return at;
}

double buckling_factor(const Patch& patch, const Section& section, const Supports& supports, const Eigen::Vector3d& force) {
    const auto lowest = [&](double factor) {
        const ControlPoints points = prestressed(patch, section, factor * force);
        Supports height = supports;
        hold_in_plane(height, patch, points);
        height.close();
        System system(patch, height);
        system.add(std::make_shared<ShellEnergy>(patch, section));
        const std::vector<EigenMode> modes = lowest_modes(system, points, 1);
        REQUIRE(!modes.empty());
        return modes.front().value;
    };
    return crossing(lowest, 0, 0.5);
}

}  // namespace swale::verification
