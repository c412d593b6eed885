// What cutting off the trough does, and how good its estimate is.
//
//   swale_far_end_study [first] [last] [--jobs N] [--reference SETS]    of the six cases below
//
// sets = auto against 8, 16, 24 and 32 sets and a reference of 64, all on the same grid.

#include "benchmarks/arguments.h"
#include "benchmarks/in_parallel.h"
#include "benchmarks/keep_memory.h"
#include "benchmarks/published/coverage.h"
#include "materials/catalogue.h"
#include "solver/transition.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>
#include <string>

namespace {

using namespace swale;
using namespace swale::benchmark;

struct Design {
    const char* belt;
    double per_width;  // [N/mm]
    double lift;       // over the trough depth
    double distance;   // [mm]
    double diameter;   // [mm]
    Symmetry model;
    double grid;
};

constexpr Design designs[] = {
    {"EP 800/4 6+3", 37.5, 0, 2400, 630, Symmetry::half, 1},   {"EP 800/4 6+3", 37.5, 0.5, 2400, 630, Symmetry::half, 1},
    {"ST 1600 8+6", 137.5, 0, 4800, 1000, Symmetry::half, 1},  {"ST 1600 8+6", 137.5, 0.5, 4800, 1000, Symmetry::half, 1},
    {"EP 800/4 6+3", 37.5, 0.5, 2400, 630, Symmetry::full, 2}, {"ST 1600 8+6", 137.5, 0.5, 4800, 1000, Symmetry::full, 2},
};

TransitionCase built(const Design& design) {
    TransitionCase transition;
    transition.belt = belt_from_designation(design.belt, 1200);
    TransitionLayout& layout = transition.layout;
    layout.belt_width = 1200;
    layout.pulley.diameter = design.diameter;
    layout.trough = {35 * std::numbers::pi / 180, 465, 465, 10, 5, 152.4, 1200, {}, Support::rolls, {}, 0};
    layout.pulley.lift = design.lift * layout.trough_depth();
    layout.distance = design.distance;
    transition.states = {{"state", design.per_width * 1200, {}}};
    transition.settings.model = design.model;
    transition.settings.grid = design.grid;
    return transition;
}

TransitionResult solve(const Design& design, std::optional<int> sets) {
    TransitionCase transition = built(design);
    transition.layout.trough.sets = sets;
    return solve_transition(transition);
}

Comparison compared(const Reading& short_one, const Reading& long_one) {
    return {short_one.value, short_one.far_end_error.value_or(0), std::abs(short_one.value - long_one.value),
            long_one.far_end_error.value_or(0)};
}

void print_row(const std::string& sets, const TransitionResult& result, Readings reference, Coverage& coverage) {
    Readings readings = result.states.front();
    std::printf("| %s | %d | %.1f |", sets.c_str(), result.cost.degrees_of_freedom, result.cost.seconds);
    for (std::size_t k = 0; k < reading_count; ++k) {
        const Comparison c = compared(*readings.all()[k], *reference.all()[k]);
        std::printf(" %.5g (%.1g / %.1g %s) |", c.value, c.estimate, c.error, word(c.covered()));
        coverage.add(k, c);
    }
    std::printf("\n");
}

void print_head(const Design& design, int reference) {
    std::printf(
        "\n## %s, %.1f N/mm, lift %.1f of the depth, %s model, grid %.0f\n\nEach: value (far-end error estimated / distance "
        "from %d sets, covered)\n\n"
        "| sets | unknowns | s |",
        design.belt, design.per_width, design.lift, design.model == Symmetry::half ? "half" : "full", design.grid, reference);
    for (const char* name : reading_names) std::printf(" %s |", name);
    std::printf("\n|---|---|---|---|---|---|---|---|---|---|\n");
}

void study(const Design& design, int reference_sets, int jobs, Coverage& of_auto, Coverage& of_given) {
    const std::vector<std::optional<int>> wanted{reference_sets, std::nullopt, 8, 16, 24, 32};
    std::vector<TransitionResult> results(wanted.size());
    in_parallel(numbers(0, static_cast<int>(wanted.size())), jobs, [&](int k) {
        results[k] = solve(design, wanted[k]);
        std::fprintf(stderr, "%s: %d sets, %.0f s\n", design.belt, results[k].sets, results[k].cost.seconds);
    });
    print_head(design, reference_sets);
    const StateResult& reference = results[0].states.front();
    for (std::size_t k = 1; k <= wanted.size(); ++k) {
        const TransitionResult& result = results[k % wanted.size()];
        const StateResult& state = result.states.front();
        const std::string name =
            wanted[k % wanted.size()] ? std::to_string(result.sets) : "auto: " + std::to_string(result.sets);
        Coverage not_counted;
        if (state.status != SolveStatus::converged)
            std::printf("| %s | %s |\n", name.c_str(), state.reason.c_str());
        else
            print_row(name, result, reference, k == wanted.size() ? not_counted : k == 1 ? of_auto : of_given);
        for (const std::string& note : state.notes) std::fprintf(stderr, "  %s sets: %s\n", name.c_str(), note.c_str());
    }
    std::fflush(stdout);
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const Arguments arguments(count, values);
    const int known = static_cast<int>(std::size(designs)), last = std::min(arguments.plain(1, known), known);
    Coverage of_auto, of_given;
    for (int k = arguments.plain(0, 0); k < last; ++k)
        study(designs[k], arguments.option("reference", 64), arguments.option("jobs", 2), of_auto, of_given);
    std::printf("\n## sets = auto\n");
    of_auto.print();
    std::printf("\n## 8, 16, 24 and 32 sets\n");
    of_given.print();
}
