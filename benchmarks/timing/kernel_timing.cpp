// What an iteration is made of, on the fabric belt of ../published near its solution: the terms per span, the band per unknown.
// The least of many runs, since other work on the machine only ever adds.

#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/start_surface.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <limits>

namespace {

using namespace swale;

/// Milliseconds of the fastest of several runs.
template <class Work>
double least_ms(const Work& work) {
    double least = std::numeric_limits<double>::infinity(), sum = 0;
    for (int run = 0; run < 200 && (run < 5 || sum < 1000); ++run) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        const double ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
        least = std::min(least, ms);
        sum += ms;
    }
    return least;
}

GridSolution solve(const TransitionCase& transition, double grid, int gauss_points) {
    const double underside = transition.belt.section.underside, scale = first_scale(transition, transition.states[0]);
    const StartSurface surface(transition.layout, 2, underside);
    GridTask task{transition, transition.states[0], 2, belt_grid(transition.layout, {2, underside, grid, true}), scale, "grid"};
    task.gauss_points = gauss_points;
    NewtonTimes times;
    return solve_grid(
        task, [&](const Patch& patch) { return patch.follow([&](double x, double y) { return surface.at(x / scale, y); }); },
        {}, times);
}

/// Energy, gradient and tangent of some terms [ms]; the tangent goes into a band that is at hand.
struct Times {
    double energy, gradient, tangent;
    double sum() const { return energy + gradient + tangent; }
};

Times times_of(const System& system, const ControlPoints& points) {
    const Eigen::VectorXd q = system.supports().project(points);
    BandMatrix band = system.tangent(points);
    return {least_ms([&] { return system.energy(q); }), least_ms([&] { return system.full_gradient(points); }),
            least_ms([&] { system.tangent_into(points, band); })};
}

/// The solution on `grid`, seen on the grid with every span halved.
void print_row(double grid, int gauss_points) {
    const TransitionCase transition = benchmark::fabric_transition(2000, 104, grid);
    const GridSolution solution = solve(transition, grid, gauss_points);
    const Patch& coarse = solution.model.patch;
    const Patch patch{coarse.along.halved(), coarse.across.halved()};
    const BeltModel model = belt_model(transition, transition.states[0], 2, patch, solution.model.scale, gauss_points);
    const ControlPoints points = coarse.refine(solution.points, patch);
    System none(model.patch, model.system.supports()), shell = none, contact = none;
    shell.add(model.shell);
    for (const BeltContact& roll : model.contacts) contact.add(roll.energy, TermKind::contact);

    const Times rest = times_of(none, points), of_shell = times_of(shell, points), of_contact = times_of(contact, points);
    BandMatrix tangent = model.system.tangent(points), storage = tangent;
    const double copy = least_ms([&] { storage = tangent; });
    const double factorise = least_ms([&] {
                                 storage = tangent;
                                 storage = BandFactor(std::move(storage)).memory();
                             }) -
                             copy;
    const BandFactor factor(tangent);
    const Eigen::VectorXd right = Eigen::VectorXd::Ones(tangent.size());
    const double solve_once = least_ms([&] { return factor.solve(right); });

    const int spans = model.patch.along.spans() * model.patch.across.spans();
    const auto us = [&](double with, double without) { return 1e3 * (with - without) / spans; };
    std::printf("| %d | %d | %d | %d x %d | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.1f | %.1f | %.1f |\n",
                model.system.unknowns(), tangent.half_bandwidth(), spans, gauss_points, gauss_points,
                us(of_shell.energy, rest.energy), us(of_shell.gradient, rest.gradient), us(of_shell.tangent, rest.tangent),
                us(of_contact.energy, rest.energy), us(of_contact.gradient, rest.gradient),
                us(of_contact.tangent, rest.tangent), rest.tangent, of_shell.sum() + of_contact.sum() - rest.sum(), factorise,
                solve_once);
    std::fflush(stdout);
}

}  // namespace

int main() {
    std::printf("| unknowns | half bandwidth | spans | Gauss points | shell: energy us a span | gradient | tangent ");
    std::printf("| contact: energy us a span | gradient | tangent | clearing the band ms | shell and contact once each ms ");
    std::printf("| factorisation ms | solve ms |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
    for (const double grid : {1.06, 0.58, 0.42, 0.28})
        for (const int gauss_points : {2, 3}) print_row(grid, gauss_points);
}
