// The idealised strip, held flat at one end and on an exact trough profile at the other, drawn by 6 mm, on six grids: the
// strain at the corner of the flat held edge, which is singular and therefore never settles; and what a grid costs the solver
// for how near its edge strain comes to that of the finest.

#include "benchmarks/published/held_belt.h"
#include "mesh/belt_grid.h"
#include "solver/newton/newton.h"
#include "solver/strain/belt_probe.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/start_surface.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <vector>

namespace {

using namespace swale;
using benchmark::held_transition;

GridSolution solve(const TransitionCase& transition, double grid) {
    const double underside = transition.belt.section.underside;
    const StartSurface surface(transition.layout, 1, underside);
    const GridTask task{transition, transition.states[0], 1, belt_grid(transition.layout, {1, underside, grid, true}), 1,
                        "grid"};
    NewtonTimes times;
    return solve_grid(
        task, [&](const Patch& patch) { return patch.follow([&](double x, double y) { return surface.at(x, y); }); }, {},
        times);
}

// Processor time of the solution, grid and start included, median of five [s].
double processor_time(const TransitionCase& transition, double grid) {
    std::array<double, 5> times{};
    for (double& time : times) {
        const std::clock_t begin = std::clock();
        solve(transition, grid);
        time = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    }
    std::ranges::sort(times);
    return times[2];
}

// At the places that are compared, x from 250 to 1750 mm.
std::vector<double> edge_strains(const TransitionCase& transition, const GridSolution& solution) {
    const BeltProbe probe(solution.model.patch, solution.points, transition.belt.section);
    std::vector<double> strains;
    for (int x = 250; x <= 1750; x += 25) strains.push_back(probe.at(x, 600).strain);
    return strains;
}

double largest_deviation(const std::vector<double>& strains, const std::vector<double>& reference) {
    double largest = 0;
    for (std::size_t k = 0; k < strains.size(); ++k) largest = std::max(largest, std::abs(strains[k] / reference[k] - 1));
    return largest;
}

void print_row(const TransitionCase& transition, double grid, const GridSolution& solution) {
    const BeltProbe probe(solution.model.patch, solution.points, transition.belt.section);
    const ControlPoints gradient = solution.model.system.full_gradient(solution.points);
    double force = 0;
    for (int j = 0; j < probe.patch().across.size(); ++j)
        force += 2 * gradient(0, probe.patch().index(probe.patch().along.size() - 1, j));
    std::printf("| %g | %d x %d | %d | %.4f |", grid, probe.patch().along.spans(), probe.patch().across.spans(),
                solution.record.unknowns, force / 1e3);
    for (const double x : {500.0, 1000.0, 1500.0, 1675.0, 1900.0}) std::printf(" %.6f |", 100 * probe.at(x, 600).strain);
    const SurfacePoint centre = probe.at(1000, 0);
    std::printf(" %.6f | %.5f | %.4f |\n", 100 * centre.strain, centre.position.z(), 100 * probe.at(0, 600).strain);
    std::fflush(stdout);
}

}  // namespace

int main() {
    const TransitionCase transition = held_transition();
    const std::array grids{2.0, 1.5, 1.0, 0.5, 0.25, 0.125};
    std::vector<GridSolution> solutions;
    for (const double grid : grids) solutions.push_back(solve(transition, grid));
    std::printf(
        "| grid | spans | unknowns | force kN | edge strain %% at x = 500 | 1000 | 1500 | 1675 | 1900 mm |"
        " centre strain %% | centre z mm | edge strain %% at the held corner "
        "|\n|---|---|---|---|---|---|---|---|---|---|---|---|\n");
    for (std::size_t k = 0; k < grids.size(); ++k) print_row(transition, grids[k], solutions[k]);
    std::printf(
        "\n| grid | unknowns | iterations | processor time s | edge strain off by, x from 250 to 1750 mm "
        "|\n|---|---|---|---|---|\n");
    const std::vector<double> reference = edge_strains(transition, solutions.back());
    for (std::size_t k = 0; k + 1 < grids.size(); ++k) {
        const double off = largest_deviation(edge_strains(transition, solutions[k]), reference);
        const NewtonRecord& record = solutions[k].record;
        std::printf("| %g | %d | %d | %.4f | %.3f %% |\n", grids[k], record.unknowns, record.iterations,
                    processor_time(transition, grids[k]), 100 * off);
    }
}
