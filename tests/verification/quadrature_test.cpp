#include "benchmarks/published/fabric_belt.h"
#include "tests/solver/term_checks.h"
#include "tests/verification/curved_shell.h"
#include "tests/verification/line_rules.h"
#include "tests/verification/patch_rule.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <memory>
#include <vector>

// The generalised Gauss rule of the whole patch, and whether it and Gauss points see every deformation. How exact they are:
// quadrature_accuracy_test.cpp.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

// --- the rule

/// Largest error of the integrals of all continuous cubics, the Bernstein polynomials of the spans with the ends of neighbours
/// joined, relative to the longest span.
double cubic_error(const CubicBasis& basis, const LineRule& rule) {
    Eigen::VectorXd excess = Eigen::VectorXd::Zero(3 * basis.spans() + 1);
    double longest = 0;
    for (int s = 0; s < basis.spans(); ++s) {
        const double length = basis.breaks()[s + 1] - basis.breaks()[s];
        excess.segment<4>(3 * s).array() -= length / 4;
        longest = std::max(longest, length);
    }
    for (const LinePoint& point : rule.points) {
        const int s = basis.span_of(point.position);
        const double begin = basis.breaks()[s], t = (point.position - begin) / (basis.breaks()[s + 1] - begin), u = 1 - t;
        excess.segment<4>(3 * s) += point.weight * Eigen::Vector4d(u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t);
    }
    return excess.cwiseAbs().maxCoeff() / longest;
}

void check_rule(const CubicBasis& basis, double tolerance = 1e-13) {
    const LineRule rule = patch_rule(basis);
    const int n = basis.spans();
    CAPTURE(n);
    CHECK(static_cast<int>(rule.points.size()) == (n % 2 == 1 ? (3 * n + 1) / 2 : (3 * n + 2) / 2));
    CHECK(cubic_error(basis, rule) < tolerance);
    for (const LinePoint& point : rule.points) {
        CHECK(point.weight > 0);
        CHECK(point.basis.first == basis.span_of(point.position));
    }
}

// --- deformations without energy

/// The shell without stress as the grid has it, held as a rigid body is: a spline is no exact cylinder.
ControlPoints at_rest(const Patch& patch, const std::shared_ptr<const Term>& shell, const ControlPoints& start) {
    Supports supports(patch.points());
    const int along = patch.index(patch.along.size() - 1, 0), across = patch.index(0, patch.across.size() - 1);
    for (const Freedom held : {Freedom{0, x}, {0, y}, {0, z}, {along, y}, {along, z}, {across, z}})
        supports.fix(held, start(held.component, held.point));
    supports.close();
    System system(patch, supports);
    system.add(shell);
    NewtonSettings settings;
    settings.tolerance = 1e-14;
    return supports.expand(minimise(system, supports.project(start), settings).q);
}

/// Tangent without supports of the fabric belt at rest, as a cylinder if there is a radius.
Eigen::MatrixXd tangent_at_rest(const Rule& rule, const Patch& patch, double radius) {
    const Section section = benchmark::fabric_transition(2000, 104, 1).belt.section;
    const auto shell = rule.shell(patch, section, radius > 0 ? cylinder_curvature(radius) : NaturalCurvature(no_curvature));
    return term_checks::dense_tangent(*shell, at_rest(patch, shell, radius > 0 ? rolled_up(patch, radius) : flat(patch)));
}

/// Eigenvalues below 1e-11 of the largest.
int zeros(const Eigen::MatrixXd& K) {
    const Eigen::VectorXd values = Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(K, Eigen::EigenvaluesOnly).eigenvalues();
    return static_cast<int>((values.array() < 1e-11 * values.maxCoeff()).count());
}

/// The least energy of a deformation over its energy by full integration.
double softest(const Eigen::MatrixXd& K, const Eigen::MatrixXd& full) {
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> modes(full);
    const Eigen::Index n = full.rows() - 6;
    const Eigen::MatrixXd V =
        modes.eigenvectors().rightCols(n) * modes.eigenvalues().tail(n).cwiseSqrt().cwiseInverse().asDiagonal();
    return Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(V.transpose() * K * V, Eigen::EigenvaluesOnly).eigenvalues()[0];
}

/// Checks that the six motions of a rigid body are all that costs nothing, and how soft the softest deformation may be.
void check_rank(const Patch& patch, double radius, double softest_allowed) {
    const Eigen::MatrixXd full = tangent_at_rest(gauss(4), patch, radius);
    for (const Rule& rule : {gauss(2), gauss(3), of_patch()}) {
        const Eigen::MatrixXd K = tangent_at_rest(rule, patch, radius);
        const double least = softest(K, full);
        CAPTURE(rule.name);
        CAPTURE(radius);
        CHECK(zeros(K) == 6);
        CHECK(least > softest_allowed);
        CHECK(least < 1);
    }
}

}  // namespace

TEST_CASE("the patch rule integrates all continuous cubics on any knots with positive weights") {
    for (const int spans : {1, 2, 3, 8, 9}) check_rule(CubicBasis(equal_breaks(7, spans)));
    for (const double grid : {3.0, 2.0, 1.0, 0.5}) {
        check_rule(fabric_grid(grid).along);
        check_rule(fabric_grid(grid).across);
    }
    // Neighbours up to a hundred thousand to one; what is rounded is the place in the short ones.
    for (const int spans : {12, 13}) {
        std::vector<double> breaks{0};
        for (int s = 0; s < spans; ++s) breaks.push_back(breaks.back() + std::pow(10, s * 5 % 7 - 3));
        check_rule(CubicBasis(breaks), 1e-11);
    }
}

TEST_CASE("the patch rule has the nodes and weights that Newton finds on equal spans") {
    const ReferenceTable table = reference_table("quadrature_c0_cubics.csv");
    const std::vector<double> nodes = table.numbers("node"), weights = table.numbers("weight");
    const LineRule rule = patch_rule(CubicBasis(equal_breaks(9, 9)));
    REQUIRE(rule.points.size() == nodes.size());
    for (std::size_t k = 0; k < nodes.size(); ++k) {
        CHECK(std::abs(rule.points[k].position - nodes[k]) < 1e-9);
        CHECK(std::abs(rule.points[k].weight - weights[k]) < 1e-9);
    }
    const auto tabulated = [&](double value) {
        return Reference{value, "span", table.source, Kind::other_method, "nine equal spans", 1e-9, "ten digits in the table"};
    };
    check("first node", tabulated(nodes[0]), rule.points[0].position);
    check("first weight", tabulated(weights[0]), rule.points[0].weight);
    check("fourth node", tabulated(nodes[3]), rule.points[3].position);
    check("fourth weight", tabulated(weights[3]), rule.points[3].weight);
}

TEST_CASE("no rule leaves more than the six rigid motions without energy on equal spans") {
    for (const int spans : {6, 7})
        for (const double radius : {0.0, 300.0}) check_rank(panel(900, 600, spans, spans), radius, 0.1);
}

TEST_CASE("no rule leaves more than the six rigid motions without energy on graded knots") {
    for (const double radius : {0.0, 300.0}) check_rank(fabric_grid(2), radius, 0.025);
}
