// What a carcass that bears less in compression changes where the centre is slack: two belts, two tensions, falling shares.

#include "benchmarks/published/fabric_belt.h"
#include "materials/catalogue.h"
#include "solver/transition.h"

#include <cstdio>
#include <string>

namespace {

swale::TransitionCase slack_transition(const std::string& designation, double distance, double tension, double share) {
    swale::TransitionCase transition = swale::benchmark::fabric_transition(distance, 0, 1);
    transition.belt = swale::belt_from_designation(designation, 1200);
    transition.belt.width = 1200;
    transition.belt.section.compression.share = share;
    transition.states = {{"slack", tension * 1200, {}}};
    return transition;
}

std::string with_error(const swale::Reading& reading, double unit) {
    char text[64];
    std::snprintf(text, sizeof text, "%.3g +- %.1g", reading.value * unit,
                  (reading.error.value_or(0) + reading.far_end_error.value_or(0)) * unit);
    return text;
}

void print_row(const std::string& belt, double distance, double tension, double share) {
    const swale::TransitionResult result = solve_transition(slack_transition(belt, distance, tension, share));
    const swale::StateResult& state = result.states.front();
    if (state.status != swale::SolveStatus::converged) std::printf("not converged: %s\n", state.reason.c_str());
    std::printf("| %s | %.0f | %.0f | %g | %s | %s | %s | %s | %.2g, %.2g | %d |\n", belt.c_str(), distance, tension, share,
                with_error(state.tension_min, 1).c_str(), with_error(state.centre_strain_min, 100).c_str(),
                with_error(state.edge_strain_max, 100).c_str(), with_error(state.junction_bending_strain_max, 100).c_str(),
                1e5 * state.eigenvalue_symmetric.value_or(0), 1e5 * state.eigenvalue_antisymmetric.value_or(0),
                result.cost.newton_iterations);
    std::fflush(stdout);
}

}  // namespace

int main() {
    std::printf(
        "| belt | distance mm | tension N/mm | share of A11 | lowest tension N/mm | centre strain %% | edge strain %% | "
        "junction strain %% | eigenvalues 1e-5 N/mm^3 | Newton |\n|---|---|---|---|---|---|---|---|---|---|\n");
    for (const double tension : {10.0, 5.0})
        for (const double share : {1.0, 0.3, 0.1, 0.03, 0.01}) print_row("EP 800/4 6+3", 1200, tension, share);
    for (const double tension : {10.0, 5.0})
        for (const double share : {1.0, 0.1, 0.01}) print_row("ST 1600 8+6", 2400, tension, share);
}
