#include "tests/verification/curved_shell.h"

#include "solver/equilibrium/band_matrix.h"
#include "solver/equilibrium/dead_load.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale::verification {

namespace {

enum { x, y, z };

std::vector<double> equal(double length, int spans) {
    std::vector<double> breaks;
    for (int s = 0; s <= spans; ++s) breaks.push_back(length * s / spans);
    return breaks;
}

Supports closed(Supports supports) {
    supports.close();
    return supports;
}

System shell_system(const Patch& patch, const std::shared_ptr<const Term>& shell, const Supports& open) {
    System system(patch, closed(open));
    system.add(shell);
    return system;
}

// Reduced stiffness of plane stress; Jones, Mechanics of Composite Materials, 2nd ed., eq. 2.70:
//   Q11 = E1/(1 - nu12 nu21), Q12 = nu12 Q22, Q66 = G12.
Eigen::Matrix3d reduced_stiffness(const Ply& ply, bool axial) {
    const double share = 1 - ply.poisson * ply.poisson * ply.across / ply.along;
    const double along = ply.along / share, across = ply.across / share;
    return axial ? orthotropic(along, across, ply.poisson * across, ply.shear)
                 : orthotropic(across, along, ply.poisson * across, ply.shear);
}

}  // namespace

Section isotropic_section(double modulus, double poisson, double thickness) {
    return cross_ply_section({modulus, modulus, modulus / (2 * (1 + poisson)), poisson}, {true}, thickness);
}

// A = sum Q (z_k - z_(k-1)), D = sum Q (z_k^3 - z_(k-1)^3)/3; Jones, eq. 4.22 and 4.24.
Section cross_ply_section(const Ply& ply, const std::vector<bool>& axial, double thickness) {
    Section section;
    const double each = thickness / static_cast<double>(axial.size());
    double bottom = -thickness / 2;
    for (const bool along_axis : axial) {
        const Eigen::Matrix3d Q = reduced_stiffness(ply, along_axis);
        const double top = bottom + each;
        section.membrane += Q * each;
        section.bending += Q * (top * top * top - bottom * bottom * bottom) / 3;
        bottom = top;
    }
    return section;
}

Patch panel(double length, double arc, int spans_along, int spans_around) {
    return {CubicBasis(equal(length, spans_along)), CubicBasis(equal(arc, spans_around))};
}

ControlPoints rolled_up(const Patch& patch, double radius) {
    return patch.interpolate(
        [&](double u, double s) { return Eigen::Vector3d(u, radius * std::sin(s / radius), radius * std::cos(s / radius)); });
}

NaturalCurvature cylinder_curvature(double radius) {
    return [radius](double, double) { return Eigen::Vector3d(0, -1 / radius, 0); };
}

int points_on(const Patch& patch, Edge edge) {
    return edge == Edge::begin || edge == Edge::end ? patch.across.size() : patch.along.size();
}

int edge_point(const Patch& patch, Edge edge, int k, int row) {
    switch (edge) {
        case Edge::begin:
            return patch.index(row, k);
        case Edge::end:
            return patch.index(patch.along.size() - 1 - row, k);
        case Edge::crown:
            return patch.index(k, row);
        case Edge::far:
            return patch.index(k, patch.across.size() - 1 - row);
    }
    return 0;
}

void hold(Supports& supports, const Patch& patch, Edge edge, int component, const ControlPoints& start) {
    for (int k = 0; k < points_on(patch, edge); ++k) {
        const int p = edge_point(patch, edge, k);
        supports.fix({p, component}, start(component, p));
    }
}

void level(Supports& supports, const Patch& patch, Edge edge, int component) {
    for (int k = 0; k < points_on(patch, edge); ++k)
        supports.tie({edge_point(patch, edge, k, 1), component}, {{{edge_point(patch, edge, k), component}, 1}});
}

void mirror(Supports& supports, const Patch& patch, Edge edge, int component) {
    for (const int c : {x, y, z})
        if (c != component) level(supports, patch, edge, c);
    hold(supports, patch, edge, component, ControlPoints::Zero(3, patch.points()));
}

PointLoadedShell::PointLoadedShell(const Patch& patch, std::shared_ptr<const Term> shell, const Supports& open, Freedom loaded,
                                   double share)
    : patch_(patch),
      shell_(std::move(shell)),
      open_(open),
      loaded_(loaded),
      share_(share),
      free_(shell_system(patch_, shell_, open_)) {}

System PointLoadedShell::with_load(double load) const {
    System system = shell_system(patch_, shell_, open_);
    ControlPoints forces = ControlPoints::Zero(3, patch_.points());
    forces(loaded_.component, loaded_.point) = share_ * load;
    system.add(std::make_shared<DeadLoad>(forces));
    return system;
}

// Where no force is left a residual relative to the forces says nothing: Newton goes on to the rounding of the energy.
ControlPoints PointLoadedShell::at_rest(const ControlPoints& start) const {
    return free_.supports().expand(minimise(free_, free_.supports().project(start), settings).q);
}

LoadedState PointLoadedShell::under(double load, const ControlPoints& start) const {
    const System system = with_load(load);
    const NewtonOutcome outcome = minimise(system, system.supports().project(start), settings);
    CAPTURE(load);
    REQUIRE_MESSAGE(outcome.converged, outcome.sentence);
    return {load, system.supports().expand(outcome.q)};
}

LoadedState PointLoadedShell::held_at(double position, const ControlPoints& start) const {
    Supports held = open_;
    held.fix(loaded_, position);
    const System system = shell_system(patch_, shell_, held);
    const NewtonOutcome outcome = minimise(system, system.supports().project(start), settings);
    CAPTURE(position);
    REQUIRE_MESSAGE(outcome.converged, outcome.sentence);
    const ControlPoints points = system.supports().expand(outcome.q);
    return {reaction(points), points};
}

// The residual of the unknown that the loaded point is when it is free, with the points that are tied to it.
double PointLoadedShell::reaction(const ControlPoints& points) const {
    const int unknown = free_.supports().plain_unknown(loaded_.point, loaded_.component);
    return free_.supports().restrict(free_.full_gradient(points))[unknown] / share_;
}

Eigen::VectorXd PointLoadedShell::unit_load() const {
    Eigen::VectorXd load = Eigen::VectorXd::Zero(free_.unknowns());
    load[free_.supports().plain_unknown(loaded_.point, loaded_.component)] = share_;
    return load;
}

ControlPoints linear_displacements(const System& system, const ControlPoints& at_rest, const Eigen::VectorXd& load) {
    const BandFactor factor(system.tangent(at_rest));
    REQUIRE(factor.ok());
    const Eigen::VectorXd none = Eigen::VectorXd::Zero(load.size());
    return system.supports().expand(factor.solve(load)) - system.supports().expand(none);
}

}  // namespace swale::verification
