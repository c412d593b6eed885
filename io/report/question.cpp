#include "io/report/question.h"

#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace swale {

namespace {

double degrees(double angle) {
    return angle * 180 / std::numbers::pi;
}

std::string pulley_words(const Pulley& pulley) {
    const std::string end = pulley.end == BeltEnd::tail ? "tail" : "head";
    if (pulley.support == Support::held) return "a held line in place of the " + end + " pulley";
    const std::string lift = pulley.lift == 0  ? "level with the trough"
                             : pulley.lift > 0 ? fmt::format("{:.0f} mm above the trough", pulley.lift)
                                               : fmt::format("{:.0f} mm below the trough", -pulley.lift);
    return fmt::format("the {} pulley (diameter {:.0f} mm, {})", end, pulley.diameter, lift);
}

/// "45, 62 and 18 kN"
std::string tensions(const std::vector<TensionState>& states) {
    constexpr size_t most_named = 5;
    const bool all_given = std::ranges::all_of(states, [](const TensionState& state) { return state.total.has_value(); });
    if (states.size() > most_named && all_given) {
        const auto [low, high] = std::ranges::minmax(states, {}, [](const TensionState& state) { return *state.total; });
        return fmt::format("{} tensions from {} to {} kN", states.size(), significant(*low.total / 1e3),
                           significant(*high.total / 1e3));
    }
    std::string text;
    for (size_t i = 0; i < states.size(); ++i) {
        const std::string value = states[i].total ? significant(*states[i].total / 1e3) + " kN"
                                                  : significant(states[i].elongation.value_or(0)) + " mm elongation";
        text += (i == 0 ? "" : i + 1 == states.size() ? " and " : ", ") + value;
    }
    return text;
}

}  // namespace

std::string question(const TransitionCase& transition) {
    const TransitionLayout& layout = transition.layout;
    const std::string belt = transition.belt.designation.empty() ? "belt" : "belt " + transition.belt.designation + ",";
    const std::string stations = layout.stations.empty() ? ""
                                                         : fmt::format(" over {} intermediate set{}", layout.stations.size(),
                                                                       layout.stations.size() > 1 ? "s" : "");
    return fmt::format(
        "Does a distance of {:.0f} mm from {}{} to the first full set of {:.0f}\u00b0 suffice for a {} {:.0f} mm wide, under "
        "{}{}?",
        layout.distance, pulley_words(layout.pulley), stations, degrees(layout.trough.angle), belt, layout.belt_width,
        tensions(transition.states), transition.bulk ? ", loaded" : "");
}

}  // namespace swale
