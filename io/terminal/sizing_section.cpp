#include "io/terminal/sizing_section.h"

#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numbers>
#include <utility>

namespace swale {

namespace {

std::string in_widths(const TransitionLayout& layout) {
    return fmt::format("{:.2f}", layout.distance / layout.belt_width);
}

const char* passes_or_fails(bool passes) {
    return passes ? "passes" : "fails";
}

// The unit of a change that somebody would make, and how it is called.
struct Change {
    double size;
    const char* name;
};

Change change_of(const Lever& lever) {
    if (lever.unit == "mm") return {10, "10 mm more"};
    if (lever.unit == "rad") return {std::numbers::pi / 180, "1 deg more"};
    return {1000, "1 kN more"};
}

std::string needed_text(const Lever& lever) {
    if (!lever.needed) return "";
    if (lever.unit == "rad") return fmt::format("{:+.3g} deg", *lever.needed * 180 / std::numbers::pi);
    return lever.unit == "N" ? fmt::format("{:+.3g} kN", *lever.needed / 1000) : fmt::format("{:+.3g} mm", *lever.needed);
}

}  // namespace

std::vector<TextRow> sizing_arrangement_rows(const Sizing& sizing) {
    std::vector<TextRow> rows{{"Distance [mm]", "widths", "", "headroom [%]", "arrangement", "nearest limit"}};
    for (const Arrangement& one : sizing.arrangements)
        rows.push_back({fmt::format("{:.0f}", one.transition.layout.distance), in_widths(one.transition.layout),
                        passes_or_fails(one.passes), significant(100 * one.headroom), shortened(one.name, 48),
                        shortened(one.binding, 44)});
    return rows;
}

std::vector<TextRow> lever_rows(const std::vector<Lever>& levers) {
    if (levers.empty()) return {};
    const bool over = std::ranges::any_of(levers, [](const Lever& lever) { return lever.needed.has_value(); });
    std::vector<TextRow> rows{{"What moves it, to first order", "change", "headroom [%]", "worth in distance [mm]"}};
    if (over) rows.front().push_back("to the limit");
    for (const Lever& lever : levers) {
        const Change change = change_of(lever);
        const std::string worth = lever.distance ? fmt::format("{:+.3g}", *lever.distance * change.size) : "";
        rows.push_back({lever.parameter, change.name, fmt::format("{:+.3g}", 100 * lever.slope * change.size), worth});
        if (over) rows.back().push_back(needed_text(lever));
    }
    return rows;
}

std::string levers_text(const std::vector<Lever>& levers) {
    const std::vector<TextRow> rows = lever_rows(levers);
    return rows.empty() ? "" : "\n" + text_table(rows, "llrrr");
}

std::vector<TextRow> sizing_history_rows(const Sizing& sizing) {
    std::vector<TextRow> rows{{"Tried [mm]", "widths", "lift [mm]", "sets", "", "headroom [%]", "nearest limit"}};
    for (const SizingStep& step : sizing.steps)
        rows.push_back({fmt::format("{}{:.0f}{}", step.coarse ? "~" : "", step.layout.distance, step.whole ? "*" : ""),
                        in_widths(step.layout), fmt::format("{:.0f}", step.layout.pulley.lift),
                        fmt::format("{}", step.layout.stations.size()), passes_or_fails(step.passed),
                        significant(100 * step.headroom), shortened(step.binding, 50)});
    return rows;
}

std::string sizing_effort(const Sizing& sizing) {
    return fmt::format(
        "~ on the coarse grid, to come near; * solved whole ({} times); the others as far as limits need "
        "({} states with those of ~)",
        sizing.whole_solutions, sizing.states_tried);
}

std::string sizing_headline(const Sizing& sizing, const SizingBounds& bounds) {
    if (!sizing.best) return "NO ARRANGEMENT WITHIN THE BOUNDS PASSES: " + sizing.reason;
    const TransitionLayout& layout = sizing.best->transition.layout;
    const std::string left = fmt::format("{:.2g} % of it is left beyond the estimated error", 100 * sizing.best->headroom);
    constexpr std::array found{"SHORTEST DISTANCE", "BEST PULLEY LIFT", "BEST INTERMEDIATE SETS", "SHORTEST ARRANGEMENT"};
    const std::string what = found.at(static_cast<std::size_t>(bounds.aim));
    const std::string distance = fmt::format("{:.0f} mm, {} belt widths", layout.distance, in_widths(layout));
    if (bounds.aim == SizingAim::distance) return fmt::format("{}: {}; {}; {}", what, distance, sizing.reason, left);
    return fmt::format("{}: {} at {}; {}; {}", what, sizing.best->name, distance, sizing.reason, left);
}

std::string sizing_tables(const Sizing& sizing, const SizingBounds& bounds) {
    std::string text;
    if (bounds.aim != SizingAim::distance) text += text_table(sizing_arrangement_rows(sizing), "rrlrll") + "\n";
    return text + text_table(sizing_history_rows(sizing), "rrrrlrl") + sizing_effort(sizing) + "\n" +
           levers_text(sizing.levers);
}

}  // namespace swale
