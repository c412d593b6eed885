// Edge excess of the fabric belt over four distances, flush and half-trough lift, on two grids, beside straight strips.

#include "benchmarks/published/fabric_belt.h"
#include "solver/screening/straight_strips.h"
#include "solver/transition.h"

#include <cstdio>

namespace {

double excess(double distance, double lift, double grid) {
    const swale::TransitionResult result = solve_transition(swale::benchmark::fabric_transition(distance, lift, grid));
    const swale::StateResult& state = result.states.front();
    if (state.status != swale::SolveStatus::converged) std::printf("not converged: %s\n", state.reason.c_str());
    return 100 * (state.edge_strain_max.value - state.far_strain);
}

}  // namespace

int main() {
    std::printf(
        "| distance mm | pulley lift mm | shell, grid 1.5 | shell, grid 1 | straight strips |\n|---|---|---|---|---|\n");
    for (const double distance : {1200.0, 2000.0, 2400.0, 3600.0})
        for (const bool half : {false, true}) {
            const auto layout = swale::benchmark::fabric_transition(distance, 0, 1).layout;
            const double lift = half ? layout.trough_depth() / 2 : 0;
            const auto strips = swale::straight_strips(swale::benchmark::fabric_transition(distance, lift, 1).layout);
            std::printf("| %.0f | %.1f | %.4f %% | %.4f %% | %.4f %% |\n", distance, lift, excess(distance, lift, 1.5),
                        excess(distance, lift, 1), 100 * (strips.edge() - strips.mean()) / (distance * distance));
            std::fflush(stdout);
        }
}
