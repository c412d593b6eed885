// What a study saves where cases of one transition are solved down its tensions, each from the one before, in place of each by
// itself: processor time a case, Newton iterations on the fine grid, and how far the edge strain comes out apart.
//   swale_warm_start
#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <vector>

namespace swale::benchmark {
namespace {

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

TransitionCase case_of(bool cords, double widths, double lift) {
    TransitionCase transition = fabric_transition(widths * 1200, lift, 1);
    transition.layout.trough.sets.reset();
    if (cords) {
        transition.belt.section.membrane = orthotropic(72000, 60, 20, 20);
        transition.belt.section.bending = orthotropic(60e3, 4e3, 1e3, 2e3);
    }
    transition.states.clear();
    for (const double tension : {48.0, 36.0, 24.0, 14.0, 7.0})
        transition.states.push_back({"", (cords ? 3 : 1) * tension * 1200, {}});
    transition.settings.accuracy = 0.05;
    return transition;
}

std::vector<TransitionResult> each_alone(const TransitionCase& transition) {
    std::vector<TransitionResult> results;
    for (const TensionState& state : transition.states) {
        TransitionCase alone = transition;
        alone.states = {state};
        results.push_back(solve_transition(alone));
    }
    return results;
}

int fine_iterations(const TransitionResult& result) {
    int iterations = 0;
    for (const NewtonRecord& record : result.states[0].newton)
        if (record.grid == "fine grid") iterations += record.iterations;
    return iterations;
}

/// Of all cases solved either way.
struct Sums {
    double seconds = 0;
    int iterations = 0, cases = 0;
};

template <class Solve>
std::vector<TransitionResult> measured(const Solve& solve, Sums& sums) {
    const double begin = processor_seconds();
    std::vector<TransitionResult> results = solve();
    sums.seconds += processor_seconds() - begin;
    for (const TransitionResult& result : results) {
        sums.iterations += fine_iterations(result);
        ++sums.cases;
    }
    return results;
}

void print(const char* belt, const char* how, const Sums& sums, double farthest) {
    std::printf("| %s | %s | %d | %.3f | %.1f | %.1e |\n", belt, how, sums.cases, sums.seconds / sums.cases,
                static_cast<double>(sums.iterations) / sums.cases, farthest);
}

void compare(bool cords) {
    Sums alone, carried;
    double farthest = 0;
    for (const double lift : {0.0, 104.0})
        for (const double widths : {1.05, 1.5, 2.1, 3.0, 4.2, 6.0}) {
            const TransitionCase transition = case_of(cords, widths, lift);
            const auto one = measured([&] { return each_alone(transition); }, alone);
            const auto other = measured([&] { return solve_tensions(transition); }, carried);
            for (std::size_t k = 0; k < one.size(); ++k) {
                const double a = one[k].states[0].edge_strain_max.value, b = other[k].states[0].edge_strain_max.value;
                farthest = std::max(farthest, std::abs(b / a - 1));
            }
        }
    const char* belt = cords ? "steel cord" : "fabric";
    print(belt, "each alone", alone, 0);
    print(belt, "down the tensions", carried, farthest);
}

}  // namespace
}  // namespace swale::benchmark

int main() {
    std::printf("| belt | solved | cases | processor s a case | Newton iterations, fine grid | edge strain apart, most |\n");
    std::printf("|---|---|---|---|---|---|\n");
    for (const bool cords : {false, true}) swale::benchmark::compare(cords);
}
