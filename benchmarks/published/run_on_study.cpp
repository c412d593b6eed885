// What a head pulley's steady run-on changes against the plane section: edge excess over the mean strain at the far end, warp
// and friction, for the belts of the shipped cases over several distances.

#include "benchmarks/keep_memory.h"
#include "materials/catalogue.h"
#include "solver/transition.h"

#include <cstdio>
#include <numbers>

namespace {

using namespace swale;

struct Design {
    const char* belt;
    double total;     // [N]
    double lift;      // [mm]
    double diameter;  // [mm]
    double distance;  // [mm]
};

constexpr Design designs[] = {
    {"EP 800/4 6+3", 45e3, 0, 630, 1800},    {"EP 800/4 6+3", 45e3, 0, 630, 2400},   {"EP 800/4 6+3", 45e3, 0, 630, 3600},
    {"EP 800/4 6+3", 45e3, 0, 630, 4800},    {"EP 800/4 6+3", 45e3, 104, 630, 2400}, {"ST 1600 8+6", 165e3, 0, 1000, 3600},
    {"ST 1600 8+6", 165e3, 0, 1000, 5400},   {"ST 1600 8+6", 165e3, 0, 1000, 7200},  {"ST 1600 8+6", 165e3, 0, 1000, 9600},
    {"ST 1600 8+6", 165e3, 104, 1000, 5400},
};

StateResult solve(const Design& design, RunOn run_on) {
    TransitionCase transition;
    transition.belt = belt_from_designation(design.belt, 1200);
    TransitionLayout& layout = transition.layout;
    layout.belt_width = 1200;
    layout.pulley = {BeltEnd::head, design.diameter, design.lift, Grip::stuck, Support::rolls, run_on};
    layout.trough = {35 * std::numbers::pi / 180, 465, 465, 10, 5, 152.4, 1200, {}, Support::rolls, {}, 0};
    layout.distance = design.distance;
    transition.states = {{"state", design.total, {}}};
    return solve_transition(transition).states.front();
}

double excess(const StateResult& state) {
    return 100 * (state.edge_strain_max.value - state.far_strain);
}

void print_row(const Design& design) {
    const StateResult plane = solve(design, RunOn::plane), steady = solve(design, RunOn::steady);
    for (const StateResult* state : {&plane, &steady})
        if (state->status != SolveStatus::converged) std::printf("not converged: %s\n", state->reason.c_str());
    if (!steady.run_on) return;
    std::printf("| %s | %.0f | %.0f | %.4f | %.4f | %.0f %% | %.1f | %.1f | %.2f | %.2f | %.1f %% |\n", design.belt,
                design.distance, design.lift, excess(plane), excess(steady), 100 * (1 - excess(steady) / excess(plane)),
                plane.tension_min.value, steady.tension_min.value, steady.run_on->warp, steady.run_on->friction,
                100 * steady.run_on->beyond_grip);
    std::fflush(stdout);
}

}  // namespace

int main() {
    benchmark::keep_memory();
    std::printf(
        "| belt | distance mm | lift mm | excess %%, plane | steady | less by | lowest tension N/mm, plane | steady | warp mm "
        "| friction needed | width beyond 0.3 |\n|---|---|---|---|---|---|---|---|---|---|---|\n");
    for (const Design& design : designs) print_row(design);
}
