#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "solver/strain/readings.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/start_surface.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

// A soft, heavy belt is pressed into the gap between the rolls. Its junction must converge on the same pair of grids as that
// of a stiff belt: what the pair differs by is the error that the user is told.

using namespace swale;

namespace {

TransitionCase pressed_belt(double along, double across, double mass) {
    TransitionCase transition = benchmark::fabric_transition(2400, 0, 1);
    Section& section = transition.belt.section;
    section.mass = mass;
    section.bending = orthotropic(along, across, 0.2 * across, 0.32 * across);
    return transition;
}

// Readings on the grid and on the ones with every span halved again and again.
std::vector<Readings> converging(const TransitionCase& transition, int grids) {
    constexpr int sets = 2;
    const Section& section = transition.belt.section;
    const StartSurface surface(transition.layout, sets, section.underside);
    Patch patch = belt_grid(transition.layout, {sets, section.underside, 1, true, boundary_layers(section)});
    const double first = first_scale(transition, transition.states[0]);
    std::vector<GridSolution> solutions;
    std::vector<Readings> readings;
    NewtonTimes times;
    for (int k = 0; k < grids; ++k) {
        const GridStart start = [&](const Patch& own) {
            if (solutions.empty()) return own.follow([&](double x, double y) { return surface.at(x / first, y); });
            const GridSolution& last = solutions.back();
            const Patch finer{last.model.patch.along.halved(), last.model.patch.across.halved()};
            return last.model.patch.refine(last.points, finer);
        };
        const double scale = solutions.empty() ? first : solutions.back().model.scale;
        const GridTask task{transition, transition.states[0], sets, patch, scale, "grid", 1e-7};
        solutions.push_back(solve_grid(task, start, {}, times));
        const GridSolution& solution = solutions.back();
        REQUIRE_MESSAGE(solution.converged, solution.sentence);
        readings.push_back(take_readings(transition, solution.model, solution.points));
        patch = {patch.along.halved(), patch.across.halved()};
    }
    return readings;
}

double change(const Reading& from, const Reading& to) {
    return std::abs(to.value / from.value - 1);
}

}  // namespace

TEST_CASE(
    "junction strain - cover strain - line force and edge strain of soft and stiff belts differ little on a pair of grids") {
    // D11 and D22 [N mm], mass [t/mm^2]: a soft heavy belt, a stiff light one. Tolerance: the 2 % that is wanted of an edge
    // strain, and 5 % for local quantities.
    for (const auto& belt : {pressed_belt(7e3, 2.5e3, 100e-9), pressed_belt(70e3, 25e3, 16e-9)}) {
        const std::vector<Readings> r = converging(belt, 2);
        CHECK(change(r[0].edge_strain_max, r[1].edge_strain_max) < 0.02);
        CHECK(change(r[0].junction_bending_strain_max, r[1].junction_bending_strain_max) < 0.05);
        CHECK(change(r[0].surface_strain_max, r[1].surface_strain_max) < 0.05);
        CHECK(change(r[0].wing_line_force_max, r[1].wing_line_force_max) < 0.05);
    }
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("the pair's difference bounds what a third grid changes at the junction of a soft belt") {
    const std::vector<Readings> r = converging(pressed_belt(7e3, 2.5e3, 100e-9), 3);
    CHECK(change(r[1].junction_bending_strain_max, r[2].junction_bending_strain_max) < 0.005);
    CHECK(change(r[1].surface_strain_max, r[2].surface_strain_max) < 0.005);
    CHECK(change(r[1].wing_line_force_max, r[2].wing_line_force_max) < 0.005);
    CHECK(change(r[1].edge_strain_max, r[2].edge_strain_max) < 0.002);
}
#endif
