// How the cost of one Newton iteration grows with the number of unknowns: shell assembly, contact, factorisation, solve.
//
//   swale_growth [most unknowns] [--repeats N]
//
// The fabric transition once on uniformly refined grids, once with an ever longer trough. The belt lies where a coarse
// solution puts it, so that rolls are touched as in a real iteration. Gradient, tangent and energy of each term are one
// iteration's work; a shift makes the tangent definite where the shape isn't quite in equilibrium, and costs nothing.

#include "benchmarks/arguments.h"
#include "benchmarks/keep_memory.h"
#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "solver/equilibrium/stopwatch.h"
#include "solver/transition.h"
#include "solver/transition/belt_model.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <functional>
#include <memory>
#include <stdexcept>
#include <vector>

namespace {

using namespace swale;
using namespace swale::benchmark;

constexpr int known_sets = 6;

enum Part { shell, contact, factorisation, solution, whole, part_count };
constexpr std::array<const char*, part_count> part_names{"shell", "contact", "factorisation", "solve", "whole"};

struct Cost {
    int unknowns = 0, half_bandwidth = 0, sets = 0;
    double grid = 1;
    std::array<double, part_count> seconds{};
};

TransitionCase fabric(int sets) {
    TransitionCase transition = fabric_transition(2400, 0, 1);
    transition.layout.trough.sets = sets;
    return transition;
}

// The solved belt of `known_sets` sets, its last bay repeated as far as wanted.
class KnownBelt {
  public:
    KnownBelt() {
        const StateResult state = solve_transition(fabric(known_sets)).states.front();
        if (state.status != SolveStatus::converged) throw std::runtime_error(state.reason);
        const auto basis = [](const std::vector<double>& knots) { return CubicBasis({knots.begin() + 3, knots.end() - 3}); };
        patch_ = std::make_unique<Patch>(Patch{basis(state.shape.knots_along), basis(state.shape.knots_across)});
        points_ = state.shape.control_points;
        scale_ = patch_->along.end() / model_length(fabric(known_sets).layout, known_sets);
    }

    double scale() const { return scale_; }
    Eigen::Vector3d at(double x, double y) const {
        const double spacing = fabric(1).layout.trough.spacing, bay = spacing * scale_, last = patch_->along.end() - bay / 2;
        const int bays = std::max(0, static_cast<int>(std::ceil((x - last) / bay - 1e-9)));
        Eigen::Vector3d position = patch_->jet(points_, x - bays * bay, y).position;
        position.x() += bays * spacing;
        return position;
    }

  private:
    std::unique_ptr<Patch> patch_;
    ControlPoints points_;
    double scale_ = 1;
};

BeltModel model_of(const TransitionCase& transition, int sets, double grid, double scale) {
    const Patch in_space = belt_grid(transition.layout, {sets, transition.belt.section.underside, grid, true});
    return belt_model(transition, transition.states[0], sets, {in_space.along.scaled(scale), in_space.across}, scale);
}

// Factor of the tangent, shifted [N/mm^3] until it is definite; only the factorisation that succeeds is timed.
BandFactor definite_factor(const System& system, const ControlPoints& points, double& seconds) {
    for (double shift = 1e-2;; shift *= 16) {
        BandMatrix tangent = system.tangent(points);
        tangent.diagonal() += (shift * system.areas()).transpose();
        double attempt = 0;
        BandFactor factor = timed(attempt, [&] { return BandFactor(std::move(tangent)); });
        seconds = attempt;
        if (factor.ok() || shift > 100) return factor;
    }
}

Cost measure(const KnownBelt& belt, int sets, double grid) {
    const TransitionCase transition = fabric(sets);
    const BeltModel model = model_of(transition, sets, grid, belt.scale());
    const System& system = model.system;
    const ControlPoints close = model.patch.follow([&](double x, double y) { return belt.at(x, y); });
    const Eigen::VectorXd q = system.supports().project(close);
    const ControlPoints points = system.supports().expand(q);
    Cost cost;
    cost.sets = sets;
    cost.grid = grid;
    cost.unknowns = system.unknowns();

    TermTimes terms;
    system.energy(q, &terms);
    const ControlPoints gradient = system.full_gradient(points, &terms);
    cost.half_bandwidth = system.tangent(points, &terms).half_bandwidth();
    cost.seconds[shell] = terms.shell;
    cost.seconds[contact] = terms.contact;
    const BandFactor factor = definite_factor(system, points, cost.seconds[factorisation]);
    timed(cost.seconds[solution], [&] { return factor.solve(system.supports().restrict(gradient)); });
    return cost;
}

Cost least_of(const KnownBelt& belt, int sets, double grid, int repeats) {
    Cost least = measure(belt, sets, grid);
    for (int k = 1; k < repeats; ++k) {
        const Cost next = measure(belt, sets, grid);
        for (int part = 0; part < whole; ++part) least.seconds[part] = std::min(least.seconds[part], next.seconds[part]);
    }
    for (int part = 0; part < whole; ++part) least.seconds[whole] += least.seconds[part];
    return least;
}

// Slope of log(time) against log(unknowns) by least squares.
double exponent(const std::vector<Cost>& costs, int part) {
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
    for (const Cost& cost : costs) {
        const double x = std::log(cost.unknowns), y = std::log(std::max(1e-7, cost.seconds[part]));
        n += 1, sx += x, sy += y, sxx += x * x, sxy += x * y;
    }
    return (n * sxy - sx * sy) / (n * sxx - sx * sx);
}

void print_table(const char* title, const std::vector<Cost>& costs) {
    std::printf(
        "\n## %s\n\n| sets | grid | unknowns | half bandwidth | shell s | contact s | factorisation s | solve s | whole s |\n"
        "|---|---|---|---|---|---|---|---|---|\n",
        title);
    for (const Cost& cost : costs) {
        std::printf("| %d | %.3f | %d | %d |", cost.sets, cost.grid, cost.unknowns, cost.half_bandwidth);
        for (const double seconds : cost.seconds) std::printf(" %.4f |", seconds);
        std::printf("\n");
    }
    if (costs.size() < 3) return;
    const std::vector<Cost> upper(costs.begin() + static_cast<std::ptrdiff_t>(costs.size() / 2 - 1), costs.end());
    std::printf("| exponent, all | | | |");
    for (int part = 0; part < part_count; ++part) std::printf(" %.2f |", exponent(costs, part));
    std::printf("\n| exponent, upper half | | | |");
    for (int part = 0; part < part_count; ++part) std::printf(" %.2f |", exponent(upper, part));
    std::printf("\n");
    std::fflush(stdout);
}

// Goes on until a step would exceed the wanted size.
std::vector<Cost> grow(const char* what, int most, const std::function<Cost(int)>& next) {
    std::vector<Cost> costs;
    for (int k = 0; costs.empty() || costs.back().unknowns < 0.75 * most; ++k) {
        costs.push_back(next(k));
        std::fprintf(stderr, "%s: %d unknowns, %.3f s\n", what, costs.back().unknowns, costs.back().seconds[whole]);
    }
    return costs;
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const Arguments arguments(count, values);
    const int most = arguments.plain(0, 200000), repeats = arguments.option("repeats", 3);
    const KnownBelt belt;
    print_table("Finer grid, six sets",
                grow("grid", most, [&](int k) { return least_of(belt, known_sets, 1.4 * std::pow(0.5, 0.5 * k), repeats); }));
    print_table("Longer trough, default coarse grid", grow("sets", most, [&](int k) {
                    return least_of(belt, static_cast<int>(std::lround(3 * std::pow(2, k))), 1, repeats);
                }));
}
