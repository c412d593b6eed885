#include "io/wear/transition_advice.h"

#include "io/case_file.h"
#include "io/sized_case.h"
#include "io/terminal/plain_text.h"
#include "io/text_file.h"
#include "io/verdict.h"
#include "solver/sizing.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

constexpr double longest_in_widths = 12, half_as_long_again = 1.5;

JunctionLoad load_of(const StateResult& state) {
    JunctionLoad load{
        state.name, converged(state), state.reason, state.junction_bending_strain_max.value, 0, state.wing_line_force_max.value,
        0};
    if (!state.running_trough) return load;
    load.trough_strain = state.running_trough->junction_bending_strain;
    load.trough_line_force = state.running_trough->wing_line_force;
    return load;
}

std::vector<JunctionLoad> loads_of(const TransitionResult& result) {
    std::vector<JunctionLoad> loads;
    for (const StateResult& state : result.states) loads.push_back(load_of(state));
    return loads;
}

std::vector<std::string> exceeded_in(const TransitionResult& result) {
    std::vector<std::string> names;
    for (const Judgement& judgement : result.criteria)
        if (over_a_limit(judgement)) names.push_back(fmt::format("{} in \"{}\"", judgement.name, judgement.state));
    return names;
}

// The shortest distance from the given one on that meets every limit.
void size(const TransitionCase& transition, const ProgressListener& progress, TransitionAdvice& advice) {
    SizingBounds bounds;
    bounds.shortest = advice.distance;
    bounds.longest = longest_in_widths * transition.belt.width;
    const Sizing sizing = size_transition(transition, bounds, progress);
    advice.changed_meets_limits = sizing.best.has_value();
    advice.no_change = sizing.reason;
    if (!sizing.best) return;
    advice.changed = sizing.best->transition.layout.distance;
    advice.changed_loads = loads_of(sizing.result);
}

void compare_with_longer(const std::string& text, const ProgressListener& progress, TransitionAdvice& advice) {
    advice.changed = half_as_long_again * advice.distance;
    advice.changed_loads = loads_of(solve_transition(parse_case(with_distance(text, *advice.changed), advice.file), progress));
}

std::string beside_trough(double value, double trough) {
    return trough > 0 ? fmt::format(", {} times that of the running trough", significant(value / trough, 2)) : "";
}

std::string load_sentence(const JunctionLoad& load) {
    if (!load.converged) return fmt::format("\"{}\" has no solution: {}", load.state, load.reason);
    return fmt::format("in \"{}\" the junction is bent to a strain of {} %{}, and the wing roll presses with {} N/mm{}",
                       load.state, significant(100 * load.strain), beside_trough(load.strain, load.trough_strain),
                       significant(load.line_force), beside_trough(load.line_force, load.trough_line_force));
}

double most(const std::vector<JunctionLoad>& loads, double JunctionLoad::*of) {
    double value = 0;
    for (const JunctionLoad& load : loads)
        if (load.converged) value = std::max(value, load.*of);
    return value;
}

std::string change_sentence(const TransitionAdvice& advice) {
    if (!advice.changed) return "no longer distance meets the limits: " + advice.no_change;
    const std::string effect =
        fmt::format("most junction strain {} % in place of {} %, wing line force {} N/mm in place of {} N/mm",
                    significant(100 * most(advice.changed_loads, &JunctionLoad::strain)),
                    significant(100 * most(advice.loads, &JunctionLoad::strain)),
                    significant(most(advice.changed_loads, &JunctionLoad::line_force)),
                    significant(most(advice.loads, &JunctionLoad::line_force)));
    if (advice.changed_meets_limits)
        return fmt::format("the shortest distance that meets every limit is {:.0f} mm in place of {:.0f} mm: {}",
                           *advice.changed, advice.distance, effect);
    return fmt::format(
        "it meets its limits as it is, so they don't explain the crease; with {:.0f} mm in place of {:.0f} mm: {}",
        *advice.changed, advice.distance, effect);
}

}  // namespace

TransitionAdvice transition_advice(const std::filesystem::path& case_file, const ProgressListener& progress) {
    const std::string text = read_text_file(case_file);
    const TransitionCase transition = parse_case(text, case_file.string());
    const TransitionResult result = solve_transition(transition, progress);
    TransitionAdvice advice;
    advice.file = case_file.string();
    advice.title = transition.title;
    advice.distance = transition.layout.distance;
    advice.verdict = verdict(result);
    advice.exit_code = exit_code(result);
    advice.loads = loads_of(result);
    advice.exceeded = exceeded_in(result);
    if (advice.exceeded.empty())
        compare_with_longer(text, progress, advice);
    else
        size(transition, progress, advice);
    return advice;
}

std::vector<std::string> sentences(const TransitionAdvice& advice) {
    std::vector<std::string> lines{fmt::format("transition \"{}\": {}", advice.title, advice.verdict)};
    for (const JunctionLoad& load : advice.loads) lines.push_back(load_sentence(load));
    for (const std::string& name : advice.exceeded) lines.push_back("over its limit: " + name);
    lines.push_back(change_sentence(advice));
    return lines;
}

}  // namespace swale
