#include "solver/newton/newton.h"

#include "solver/equilibrium/dead_load.h"
#include "solver/shell/shell_energy.h"

#include <doctest/doctest.h>

#include <memory>

using namespace swale;

namespace {

enum { x, y, z };

const Patch patch{CubicBasis({0, 20, 40, 60, 80, 100}), CubicBasis({0, 10, 20})};

/// Strip with both ends clamped, the far one moved by `elongation`, under `weight` [N/mm^2].
System clamped_strip(double elongation, double weight = 1e-3) {
    Supports supports(patch.points());
    const int last = patch.along.size() - 1;
    for (int j = 0; j < patch.across.size(); ++j) {
        for (const int c : {x, y, z}) {
            supports.fix({patch.index(0, j), c}, c == y ? patch.across.greville()[j] : 0);
            supports.fix({patch.index(last, j), c}, c == x ? 100 + elongation : c == y ? patch.across.greville()[j] : 0);
        }
        supports.fix({patch.index(1, j), z}, 0);
        supports.fix({patch.index(last - 1, j), z}, 0);
    }
    supports.close();
    Section section;
    section.membrane = orthotropic(900, 400, 100, 150);
    section.bending = orthotropic(600, 300, 80, 110);
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, section));
    system.add(std::make_shared<DeadLoad>(area_load(patch, {0, 0, -weight})));
    return system;
}

NewtonOutcome solve(const System& system, const NewtonSettings& settings) {
    const ControlPoints flat = patch.follow([](double u, double v) { return Eigen::Vector3d(u, v, 0); });
    return minimise(system, system.supports().project(flat), settings);
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Newton: a converged outcome says so in a sentence with both numbers") {
    const NewtonOutcome outcome = solve(clamped_strip(0.5), {});
    CHECK(outcome.converged);
    CHECK(outcome.residual <= outcome.tolerance);
    CHECK(holds(outcome.sentence, "<= 1.0e-08 after"));
}

TEST_CASE("Newton: no convergence is a sentence with both numbers and not an exception") {
    NewtonSettings settings;
    settings.iterations = 1;
    const NewtonOutcome outcome = solve(clamped_strip(3), settings);
    CHECK_FALSE(outcome.converged);
    CHECK(outcome.residual > outcome.tolerance);
    CHECK(holds(outcome.sentence, "residual "));
    CHECK(holds(outcome.sentence, " > 1.0e-08 after 1 iterations"));
}

TEST_CASE("Newton: the end of a converged run is a minimum with forces in balance") {
    const System system = clamped_strip(-2);  // pushed together far beyond buckling: the flat start is indefinite
    const NewtonOutcome outcome = solve(system, {});
    REQUIRE(outcome.converged);
    const ControlPoints points = system.supports().expand(outcome.q);
    CHECK(BandFactor(system.tangent(points)).ok());
    CHECK(patch.jet(points, 50, 10).position.z() < -5);
    const ControlPoints flat = patch.follow([](double u, double v) { return Eigen::Vector3d(u * 0.98, v, 0); });
    CHECK_FALSE(BandFactor(system.tangent(flat)).ok());
}

TEST_CASE("Newton: an unstable equilibrium is left for a minimum, and told where none is found") {
    const System system = clamped_strip(-2, 0);  // without weight the strip can stay flat, beyond buckling
    const NewtonOutcome flat = solve(system, {});
    REQUIRE(flat.converged);
    Eigen::VectorXd nudged = flat.q;
    nudged.array() += 1e-7;
    NewtonSettings settings;
    settings.tolerance = 1e-9;
    const NewtonOutcome minimum = minimise(system, nudged, settings);
    REQUIRE(minimum.converged);
    CHECK(std::abs(patch.jet(system.supports().expand(minimum.q), 50, 10).position.z()) > 5);
    settings.iterations = 2;
    const NewtonOutcome left = minimise(system, nudged, settings);
    REQUIRE(left.converged);
    CHECK(left.residual <= left.tolerance);
    CHECK((left.q - flat.q).cwiseAbs().maxCoeff() < 1e-6);
    CHECK(holds(left.sentence, "an unstable equilibrium"));
}

TEST_CASE("Newton: the reactions carry the load") {
    const System system = clamped_strip(0.5);
    const NewtonOutcome outcome = solve(system, {});
    const ControlPoints reaction = system.full_gradient(system.supports().expand(outcome.q));
    const int clamped = 2 * patch.across.size();  // the control points that an end holds
    CHECK(reaction.leftCols(clamped).row(z).sum() == doctest::Approx(1e-3 * 100 * 20 / 2).epsilon(1e-6));
    CHECK(reaction.rightCols(clamped).row(z).sum() == doctest::Approx(1e-3 * 100 * 20 / 2).epsilon(1e-6));
    CHECK(std::abs(reaction.row(x).sum()) < 1e-6 * reaction.norm());
}

TEST_CASE("Newton: the cap on steps changes the way and not the end") {
    NewtonSettings short_steps;
    short_steps.step_cap = 0.05;
    const NewtonOutcome free_way = solve(clamped_strip(0.5), {}), short_way = solve(clamped_strip(0.5), short_steps);
    REQUIRE(short_way.converged);
    CHECK(short_way.iterations > free_way.iterations);
    CHECK((short_way.q - free_way.q).cwiseAbs().maxCoeff() < 1e-6);
}

TEST_CASE("Newton: the watcher sees every residual from the start to the end") {
    int calls = 0;
    const System system = clamped_strip(0.5);
    const ControlPoints flat = patch.follow([](double u, double v) { return Eigen::Vector3d(u, v, 0); });
    double last = 0;
    const NewtonOutcome outcome = minimise(system, system.supports().project(flat), {}, [&](int iteration, double residual) {
        CHECK(iteration == calls++);
        last = residual;
    });
    CHECK(calls == outcome.iterations + 1);
    CHECK(last == outcome.residual);
}
