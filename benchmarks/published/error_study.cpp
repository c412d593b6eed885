// How good the estimates of the discretisation error are.
//
//   swale_error_study [first] [last] [--jobs N] [--unknowns M]              cases first .. last-1 of the designed list
//   swale_error_study [first] [last] [--jobs N] [--unknowns M] --seed S     of the campaign's random cases, three sets each
//   --accuracy P   in per mille of what is judged, on which the grid at the pulley's corner depends; 20 unless given
//
// Each case is solved with default settings and on the same grid with every span halved twice more, as long as that has no more
// than M unknowns (default 250,000). The reference's own estimate is printed, and is the floor below which an error is not
// resolved.

#include "benchmarks/arguments.h"
#include "benchmarks/campaign/case_text.h"
#include "benchmarks/campaign/random_case.h"
#include "benchmarks/in_parallel.h"
#include "benchmarks/keep_memory.h"
#include "benchmarks/published/coverage.h"
#include "benchmarks/published/designed_case.h"
#include "benchmarks/published/nested_reference.h"
#include "solver/transition.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <mutex>

namespace {

using namespace swale;
using namespace swale::benchmark;

constexpr int random_count = 40;

DesignedCase random_design(int seed, int index) {
    TransitionCase transition = random_case(seed, index);
    transition.layout.trough.sets = 3;
    transition.states.resize(1);
    transition.settings = {};
    return {case_line(transition), transition};
}

std::vector<DesignedCase> random_designs(int seed) {
    std::vector<DesignedCase> designs;
    for (int k = 0; k < random_count; ++k) designs.push_back(random_design(seed, k));
    return designs;
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

void print_case(int number, const DesignedCase& design, const TransitionResult& usual, const NestedReference& reference,
                Coverage& coverage) {
    std::printf("\n## %d. %s\n\n%d unknowns; reference %d after %d halvings\n", number, design.name.c_str(),
                usual.cost.degrees_of_freedom, reference.unknowns, reference.halvings);
    print_comparisons(usual.states.front(), reference.readings, coverage);
    for (const std::string& note : usual.states.front().notes) std::printf("\n- %s\n", note.c_str());
    std::fflush(stdout);
}

// Halvings of the grid that the state is reported on.
int halvings_of(const StateResult& state) {
    return static_cast<int>(std::ranges::count_if(state.newton, [](const NewtonRecord& grid) {
        return grid.grid == "fine grid" || grid.grid.starts_with("finer grid");
    }));
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const Arguments arguments(count, values);
    const int seed = arguments.option("seed", 0), most_unknowns = arguments.option("unknowns", 250000);
    std::vector<DesignedCase> designs = seed > 0 ? random_designs(seed) : designed_cases();
    for (DesignedCase& design : designs) design.transition.settings.accuracy = arguments.option("accuracy", 20) / 1000.0;
    const int last = std::min(arguments.plain(1, static_cast<int>(designs.size())), static_cast<int>(designs.size()));
    Coverage coverage;
    std::mutex printing;
    in_parallel(numbers(arguments.plain(0, 0), last), arguments.option("jobs", 2), [&](int k) {
        const TransitionResult usual = solve_transition(designs[k].transition);
        const StateResult& state = usual.states.front();
        std::optional<NestedReference> reference;
        if (state.status == SolveStatus::converged)
            reference = nested_reference(designs[k].transition, halvings_of(state) + 2, most_unknowns);
        const std::lock_guard lock(printing);
        if (reference && reference->halvings > halvings_of(state))
            print_case(k, designs[k], usual, *reference, coverage);
        else
            std::printf("\n## %d. %s\n\nleft out: %s\n", k, designs[k].name.c_str(),
                        state.status == SolveStatus::converged ? "no finer reference" : state.reason.c_str());
    });
    std::printf("\n## All\n");
    coverage.print();
}
