// What practice asks of a flush 35 degree transition against what the shell does, over belts of the catalogue: the shortest
// distance at which the edge stays below 1.15 times the rated tension and no strip goes slack, in belt widths, beside the
// handbook's multiple for the same share of rated tension; and how sharply the junction is bent at two distances.
//
//   swale_practice_study [--jobs N]

#include "benchmarks/arguments.h"
#include "benchmarks/in_parallel.h"
#include "benchmarks/keep_memory.h"
#include "materials/catalogue.h"
#include "mesh/idler_series.h"
#include "solver/screening.h"
#include "solver/transition.h"

#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace {

using namespace swale;
using namespace swale::benchmark;

constexpr double allowed_edge = 1.15;           // a belt maker's installation and maintenance manual, 2010, p. 23
constexpr double shortest = 0.6, longest = 12;  // widths
constexpr int bisections = 8;

struct Question {
    const char* designation;
    double width, share;  // mm; of rated tension
};

TransitionCase transition_of(const Question& q, double widths) {
    TransitionCase transition;
    transition.belt = belt_from_designation(q.designation, q.width);
    TransitionLayout& layout = transition.layout;
    layout.belt_width = q.width;
    layout.pulley.diameter = transition.belt.carcass == Carcass::steel_cord ? 1000 : 630;
    const double roll = standard_roll_length(q.width).value();
    layout.trough = {35 * std::numbers::pi / 180, roll, roll, 10, 5, 133, 1200, {}, Support::rolls, {}, 0};
    layout.distance = widths * q.width;
    transition.states = {{"", q.share * transition.belt.rated_tension.value() * q.width, {}}};
    transition.settings.accuracy = 0.05;
    transition.settings.starts = 0;
    return transition;
}

std::optional<StateResult> solved(const Question& q, double widths) {
    StateResult state = solve_transition(transition_of(q, widths)).states.front();
    if (state.status != SolveStatus::converged) return {};
    return state;
}

// Shortest distance in widths at which `holds`; empty if it does not at the longest. A state without a solution does not hold.
template <class Holds>
std::optional<double> required(const Question& q, const Holds& holds) {
    const auto good = [&](double widths) {
        const auto state = solved(q, widths);
        return state && holds(*state);
    };
    if (!good(longest)) return {};
    if (good(shortest)) return shortest;
    double low = shortest, high = longest;
    for (int k = 0; k < bisections; ++k) {
        const double middle = std::sqrt(low * high);
        (good(middle) ? high : low) = middle;
    }
    return high;
}

double handbook_multiple(const Question& q) {
    for (const HandMethod& method : screen(transition_of(q, 1)).methods)
        if (method.name == "handbook multiple") return method.minimum_distance.value() / q.width;
    return 0;
}

std::string in_widths(const std::optional<double>& value) {
    if (!value) return "> " + std::to_string(static_cast<int>(longest));
    char text[32];
    std::snprintf(text, sizeof text, "%s%.2f", *value == shortest ? "<= " : "", *value);
    return text;
}

std::string junction_strain(const Question& q, double widths) {
    const auto state = solved(q, widths);
    if (!state) return "-";
    char text[32];
    std::snprintf(text, sizeof text, "%.1f %%", 100 * state->junction_bending_strain_max.value);
    return text;
}

std::string row(const Question& q) {
    const Belt belt = belt_from_designation(q.designation, q.width);
    const double highest = allowed_edge * belt.rated_tension.value();
    const auto edge = required(q, [&](const StateResult& s) { return s.edge_tension_max.value <= highest; });
    const auto taut = required(q, [](const StateResult& s) { return s.tension_min.value >= 0; });
    char text[256];
    std::snprintf(text, sizeof text, "| %s | %.0f | %.2f | %s | %s | %.1f | %s | %s |\n", q.designation, q.width, q.share,
                  in_widths(edge).c_str(), in_widths(taut).c_str(), handbook_multiple(q), junction_strain(q, 1.5).c_str(),
                  junction_strain(q, 2.3).c_str());
    return text;
}

std::vector<Question> questions() {
    std::vector<Question> all;
    for (const double share : {1.0, 0.75, 0.4, 0.1})
        for (const auto& [designation, width] : {std::pair{"EP 315/2 3+1.5", 650.0},
                                                 {"EP 500/3 5+2", 800.0},
                                                 {"EP 800/4 6+3", 1200.0},
                                                 {"EP 1250/5 8+3", 1400.0},
                                                 {"EP 1600/4 6+2", 1800.0},
                                                 {"ST 1000 6+4", 1000.0},
                                                 {"ST 2500 8+6", 1600.0}})
            all.push_back({designation, width, share});
    return all;
}

}  // namespace

int main(int count, char** values) {
    keep_memory();
    const std::vector<Question> all = questions();
    std::vector<std::string> rows(all.size());
    in_parallel(numbers(0, static_cast<int>(all.size())), Arguments(count, values).option("jobs", 2),
                [&](int k) { rows[k] = row(all[k]); });
    std::printf(
        "| belt | width mm | tension / rated | edge <= 1.15 rated, widths | no strip slack, widths | handbook, widths | "
        "junction "
        "strain at 1.5 W | at 2.3 W |\n|---|---|---|---|---|---|---|---|\n");
    for (const std::string& text : rows) std::printf("%s", text.c_str());
}
