#include "benchmarks/published/held_belt.h"
#include "mesh/belt_grid.h"
#include "solver/newton/newton.h"
#include "solver/transition/belt_model.h"
#include "solver/transition/start_surface.h"

#include <doctest/doctest.h>

#include <vector>

// The idealised transition: flat and held at one end, laid on a trough profile at the other, drawn by a given elongation.

using namespace swale;

namespace {

struct Answer {
    double force;
    std::vector<double> edge_strain;  // at x = 500, 1000, 1500
    double centre_height;             // at mid-length
};

Answer solve(double factor, bool half) {
    const TransitionCase strip = benchmark::held_transition();
    const TensionState& state = strip.states.front();
    const Patch patch = belt_grid(strip.layout, {1, strip.belt.section.underside, factor, half});
    const BeltModel model = belt_model(strip, state, 1, patch, 1);
    const StartSurface start(strip.layout, 1, strip.belt.section.underside);
    const ControlPoints drawn = patch.follow([&](double x, double y) {
        Eigen::Vector3d place = start.at(x, y);
        place.x() *= 1 + *state.elongation / strip.layout.distance;
        return place;
    });
    NewtonSettings settings;
    settings.tolerance = 1e-11;
    const NewtonOutcome outcome = minimise(model.system, model.system.supports().project(drawn), settings);
    REQUIRE_MESSAGE(outcome.converged, outcome.sentence);
    const ControlPoints points = model.system.supports().expand(outcome.q), forces = model.system.full_gradient(points);
    Answer answer{0, {}, patch.jet(points, 1000, 0).position.z()};
    for (int j = 0; j < patch.across.size(); ++j)
        answer.force += model.multiplicity() * forces(0, patch.index(patch.along.size() - 1, j));
    for (const double x : {500.0, 1000.0, 1500.0}) answer.edge_strain.push_back(patch.jet(points, x, 600).along.norm() - 1);
    return answer;
}

double off(double value, double reference) {
    return std::abs(value / reference - 1);
}

}  // namespace

TEST_CASE("held strip: half the model gives the whole") {
    const Answer half = solve(1.5, true), whole = solve(1.5, false);
    CHECK(off(half.force, whole.force) < 1e-8);
    for (int k = 0; k < 3; ++k) CHECK(off(half.edge_strain[k], whole.edge_strain[k]) < 1e-8);
    CHECK(off(half.centre_height, whole.centre_height) < 1e-8);
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("held strip: force and strain settle from grid to grid") {
    const Answer coarse = solve(2, true), middle = solve(1, true), fine = solve(0.5, true);
    CHECK(off(coarse.force, fine.force) < 1e-3);
    CHECK(off(middle.force, fine.force) < off(coarse.force, fine.force) / 2);
    for (int k = 0; k < 3; ++k) CHECK(off(middle.edge_strain[k], fine.edge_strain[k]) < 1e-3);
}
#endif
