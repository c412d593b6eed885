#include "tests/verification/strip.h"

#include "solver/shell/shell_point.h"

#include <doctest/doctest.h>

#include <cmath>
#include <utility>

namespace swale::verification {

namespace {

enum { x, y, z };

SurfaceJet jet_at(const Patch& patch, const ControlPoints& points, double at) {
    return patch.jet(points, at, (patch.across.begin() + patch.across.end()) / 2);
}

}  // namespace

Section strip_section(double membrane, double bending) {
    Section section;
    section.membrane = orthotropic(membrane, membrane, 0, membrane / 2);
    section.bending = orthotropic(bending, bending, 0, bending / 2);
    return section;
}

Patch strip(std::vector<double> breaks, double width) {
    return {CubicBasis(std::move(breaks)), CubicBasis({0, width})};
}

std::vector<double> equal_breaks(double length, int spans) {
    std::vector<double> breaks;
    for (int s = 0; s <= spans; ++s) breaks.push_back(length * s / spans);
    return breaks;
}

ControlPoints flat(const Patch& patch) {
    return patch.follow([](double u, double v) { return Eigen::Vector3d(u, v, 0); });
}

void clamp_begin(Supports& supports, const Patch& patch, double height) {
    const std::vector<double> places = patch.across.greville();
    for (int j = 0; j < patch.across.size(); ++j) {
        supports.fix({patch.index(0, j), x}, 0);
        supports.fix({patch.index(0, j), y}, places[j]);
        supports.fix({patch.index(0, j), z}, height);
        supports.fix({patch.index(1, j), z}, height);
    }
}

void keep_plane(Supports& supports, const Patch& patch) {
    const std::vector<double> places = patch.across.greville();
    for (int i = 0; i < patch.along.size(); ++i)
        for (int j = 0; j < patch.across.size(); ++j) supports.fix({patch.index(i, j), y}, places[j]);
}

void mirror_begin(Supports& supports, const Patch& patch) {
    const std::vector<double> places = patch.across.greville();
    for (int j = 0; j < patch.across.size(); ++j) {
        supports.fix({patch.index(0, j), x}, 0);
        supports.fix({patch.index(0, j), y}, places[j]);
        supports.tie({patch.index(1, j), z}, {{{patch.index(0, j), z}, 1}});
    }
}

DeadLoad end_load(const Patch& patch, const Eigen::Vector3d& total) {
    // The integral of a cubic B-spline is a quarter of the length of its support.
    const std::vector<double> knots = patch.across.knots();
    const double width = patch.across.end() - patch.across.begin();
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    for (int j = 0; j < patch.across.size(); ++j)
        forces.col(patch.index(patch.along.size() - 1, j)) = (knots[j + 4] - knots[j]) / (4 * width) * total;
    return DeadLoad(forces);
}

ControlPoints equilibrium(const System& system, const ControlPoints& start, const NewtonSettings& settings) {
    const NewtonOutcome outcome = minimise(system, system.supports().project(start), settings);
    REQUIRE_MESSAGE(outcome.converged, outcome.sentence);
    return system.supports().expand(outcome.q);
}

double clamp_moment(const System& system, const ControlPoints& points) {
    const ControlPoints reaction = system.full_gradient(points);
    const Patch& patch = system.patch();
    double moment = 0;
    for (int j = 0; j < patch.across.size(); ++j)
        moment += reaction(z, patch.index(1, j)) * (points(x, patch.index(1, j)) - points(x, patch.index(0, j)));
    return moment;
}

Eigen::Vector3d place(const Patch& patch, const ControlPoints& points, double at) {
    return jet_at(patch, points, at).position;
}

double turn(const Patch& patch, const ControlPoints& points, double at) {
    const Eigen::Vector3d along = jet_at(patch, points, at).along;
    return std::atan2(along.z(), along.x());
}

double curvature(const Patch& patch, const ControlPoints& points, double at) {
    const SurfaceJet jet = jet_at(patch, points, at);
    PointJet derivatives;
    derivatives << jet.along, jet.across, jet.along2, jet.across2, jet.mixed;
    return point_strain(derivatives).curvature[0];
}

}  // namespace swale::verification
