// How good the estimates of the discretisation error are.
//
//   swale_error_study [first] [last] [--jobs N] [--factor F]     cases first .. last-1 of the designed list
//
// Each case is solved with default settings and on knot spans a quarter as long in both directions (settings.grid = 1/4, or
// 1/F), with the same number of sets, so that only the discretisation differs. The reference is a pair of grids like any other:
// its own estimate is printed, and is the floor below which an error is not resolved.

#include "benchmarks/arguments.h"
#include "benchmarks/in_parallel.h"
#include "benchmarks/keep_memory.h"
#include "benchmarks/published/coverage.h"
#include "benchmarks/published/designed_case.h"
#include "solver/transition.h"

#include <cmath>
#include <cstdio>
#include <mutex>

namespace {

using namespace swale;
using namespace swale::benchmark;

struct Solved {
    StateResult state;
    Cost cost;
};

Solved solve(TransitionCase transition, double grid) {
    transition.settings.grid = grid;
    TransitionResult result = solve_transition(transition);
    return {std::move(result.states.front()), result.cost};
}

bool print_reason(const char* which, const StateResult& state) {
    const bool converged = state.status == SolveStatus::converged;
    if (!converged) std::printf("\n%s not converged: %s\n", which, state.reason.c_str());
    return converged;
}

void print_comparisons(Readings usual, Readings reference, Coverage& coverage) {
    std::printf(
        "\n| reading | value | estimate | true error | reference's estimate | estimate / true | covered | at x, y mm | "
        "reference at |\n"
        "|---|---|---|---|---|---|---|---|---|\n");
    for (std::size_t k = 0; k < reading_count; ++k) {
        const Reading &of_usual = *usual.all()[k], &of_reference = *reference.all()[k];
        const Comparison c{of_usual.value, of_usual.error.value_or(0), std::abs(of_usual.value - of_reference.value),
                           of_reference.error.value_or(0)};
        coverage.add(k, c);
        std::printf("| %s | %.5g | %.2g | %.2g | %.2g | %.2f%s | %s | %.0f, %.0f | %.0f, %.0f |\n", reading_names[k], c.value,
                    c.estimate, c.error, c.floor, c.ratio(), c.resolved() ? "" : " (floor)", word(c.covered()), of_usual.x,
                    of_usual.y, of_reference.x, of_reference.y);
    }
}

void print_case(int number, const DesignedCase& design, const Solved& usual, const Solved& reference, Coverage& coverage) {
    std::printf("\n## %d. %s\n\n%d unknowns in %.1f s; reference %d unknowns in %.1f s\n", number, design.name.c_str(),
                usual.cost.degrees_of_freedom, usual.cost.seconds, reference.cost.degrees_of_freedom, reference.cost.seconds);
    const bool first = print_reason("default", usual.state), second = print_reason("reference", reference.state);
    if (first && second) print_comparisons(usual.state, reference.state, coverage);
    for (const std::string& note : usual.state.notes) std::printf("\n- %s\n", note.c_str());
    std::fflush(stdout);
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const Arguments arguments(count, values);
    const std::vector<DesignedCase> designs = designed_cases();
    const int last = std::min(arguments.plain(1, static_cast<int>(designs.size())), static_cast<int>(designs.size()));
    const double finer = arguments.option("factor", 4);
    Coverage coverage;
    std::mutex printing;
    in_parallel(numbers(arguments.plain(0, 0), last), arguments.option("jobs", 2), [&](int k) {
        const Solved usual = solve(designs[k].transition, 1), reference = solve(designs[k].transition, 1 / finer);
        const std::lock_guard lock(printing);
        std::fprintf(stderr, "%d of %d: %.0f s\n", k, last, usual.cost.seconds + reference.cost.seconds);
        print_case(k, designs[k], usual, reference, coverage);
    });
    std::printf("\n## All\n");
    coverage.print();
}
