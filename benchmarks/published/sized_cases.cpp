// Ten transitions of different belts, widths, angles, lifts and sets sized as `swale size` does it, each then solved on a grid
// twice as fine at the distance found and at one a hundredth shorter: the first has to pass, the second to fail.
//   swale_sized_cases [first] [last] [--accuracy '2 %']
#include "benchmarks/arguments.h"

#include "io/case_file.h"
#include "io/size_table.h"
#include "solver/design/headroom.h"
#include "solver/sizing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace swale::benchmark {
namespace {

struct Job {
    const char* belt;
    int width;                        ///< [mm]
    int angle;                        ///< [deg]
    int lift;                         ///< [mm]
    std::vector<double> tensions;     ///< [kN]
    std::vector<std::string> idlers;  ///< items of transition.idlers at 2000 mm
};

const std::vector<Job>& jobs() {
    static const std::vector<Job> all{
        {"EP 800/4 6+3", 1200, 35, 0, {62, 18}, {}},
        {"EP 500/3 4+2", 800, 20, 0, {28, 8}, {}},
        {"EP 1250/5 8+3", 1600, 45, 0, {130, 40}, {}},
        {"NN 500/4 5+2", 1000, 30, 60, {30, 10}, {}},
        {"EP 630/4 5+2", 1000, 35, 88, {50, 14}, {}},
        {"EP 400/3 4+2", 650, 35, 0, {15, 6}, {}},
        {"ST 1000 6+5", 1000, 35, 0, {90, 30}, {}},
        {"ST 2000 8+6", 1400, 45, 150, {280, 90}, {}},
        {"EP 800/4 6+3", 1200, 45, 0, {80, 20}, {"{ at = \"1200 mm\", angle = \"20 deg\" }"}},
        {"ST 1600 8+6",
         1200,
         35,
         0,
         {180, 60},
         {"{ at = \"700 mm\", angle = \"10 deg\" }", "{ at = \"1400 mm\", angle = \"20 deg\" }"}}};
    return all;
}

std::string case_text(const Job& job, const std::string& accuracy) {
    std::string text = fmt::format("[solve]\naccuracy = \"{}\"\n", accuracy);
    text += fmt::format("[belt]\nwidth = \"{} mm\"\ndesignation = \"{}\"\n", job.width, job.belt);
    for (const double tension : job.tensions)
        text += fmt::format("[[tension]]\nname = \"{0} kN\"\ntotal = \"{0} kN\"\n", tension);
    text += fmt::format("[pulley]\nend = \"tail\"\ndiameter = \"630 mm\"\nlift = \"{} mm\"\n", job.lift);
    text += fmt::format("[trough]\nangle = \"{} deg\"\n[transition]\ndistance = \"2000 mm\"\n", job.angle);
    if (!job.idlers.empty()) text += fmt::format("idlers = [{}]\n", fmt::join(job.idlers, ", "));
    return text;
}

TransitionCase longer_by(TransitionCase transition, double factor) {
    transition.layout.distance *= factor;
    for (auto& station : transition.layout.stations) station.at *= factor;
    return transition;
}

/// The share of the binding limit that is left, with and without the estimated error; absent without a solution.
struct Left {
    double safe = INFINITY, bare = INFINITY;
    std::string binding;
};

std::optional<Left> left_of(const TransitionResult& result) {
    Left left;
    for (const StateResult& state : result.states)
        if (state.status != SolveStatus::converged) return {};
    for (Judgement judgement : result.criteria) {
        const auto state = std::ranges::find(result.states, judgement.state, &StateResult::name);
        const double edge = state == result.states.end() ? 0 : state->edge_tension_max.value;
        const auto safe = headroom_of(judgement, edge);
        judgement.error.reset();
        const auto bare = headroom_of(judgement, edge);
        if (!safe) continue;
        if (safe->share < left.safe) left.binding = safe->name();
        left.safe = std::min(left.safe, safe->share);
        left.bare = std::min(left.bare, bare->share);
    }
    return left;
}

// Spans half as long as on the finest grid that the sizing used, by one halving.
std::optional<Left> on_finer_grid(TransitionCase transition, double grid) {
    transition.settings.grid = grid;
    return left_of(solve_transition(transition));
}

std::string in_print(const std::optional<Left>& left) {
    return left ? fmt::format("{:+.2f} ({:+.2f})", 100 * left->safe, 100 * left->bare) : "no solution";
}

// A halving is in every sizing.
double half_of_finest(const TransitionCase& sized, const TransitionResult& result) {
    int halvings = 0;
    for (const StateResult& state : result.states) {
        const auto fine = [](const NewtonRecord& record) {
            return record.grid == "fine grid" || record.grid.starts_with("finer grid");
        };
        halvings = std::max(halvings, static_cast<int>(std::ranges::count_if(state.newton, fine)));
    }
    return sized.settings.grid * std::pow(0.5, halvings);
}

void print_row(int number, const std::string& accuracy) {
    const Job& job = jobs()[number - 1];
    const std::string text = case_text(job, accuracy);
    const TransitionCase given = parse_case(text, "sized case");
    const Sizing sizing = size_transition(given, sizing_bounds(text, "sized case", given));
    const std::string what = fmt::format("{} | {} {} mm, {} deg, lift {} mm, {} sets between", number, job.belt, job.width,
                                         job.angle, job.lift, job.idlers.size());
    if (!sizing.best) {
        fmt::print("| {} | none: {} | | | |\n", what, sizing.reason);
        return;
    }
    const TransitionCase& sized = sizing.best->transition;
    const double grid = half_of_finest(sized, sizing.result);
    const auto there = on_finer_grid(sized, grid), shorter = on_finer_grid(longer_by(sized, 0.99), grid);
    fmt::print("| {} | {:.0f} | {} | {} | {} | {} |\n", what, sized.layout.distance, there ? there->binding : "",
               fmt::format("{:+.2f}", 100 * sizing.best->headroom), in_print(there), in_print(shorter));
    std::fflush(stdout);
}

}  // namespace
}  // namespace swale::benchmark

int main(int count, char** values) {
    using namespace swale::benchmark;
    const Arguments arguments(count, values);
    const int last = static_cast<int>(jobs().size());
    fmt::print(
        "| | case | distance [mm] | binding | left, sized [%] | left on the finer grid, bare [%] | 1 % shorter, bare [%] |\n");
    fmt::print("|---|---|---|---|---|---|---|\n");
    for (int number = arguments.plain(0, 1); number <= arguments.plain(1, last); ++number)
        if (number >= 1 && number <= last) print_row(number, arguments.option("accuracy", std::string("2 %")));
}
