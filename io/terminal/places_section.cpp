#include "io/terminal/places_section.h"

#include "io/terminal/plain_text.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

struct Extreme {
    const char* title;
    Reading StateResult::*reading;
    double factor;  ///< from internal units to those of the title
    bool largest;
};

constexpr Extreme extremes[] = {
    {"edge strain, most [%]", &StateResult::edge_strain_max, 100, true},
    {"centre strain, least [%]", &StateResult::centre_strain_min, 100, false},
    {"edge tension, most [N/mm]", &StateResult::edge_tension_max, 1, true},
    {"tension, least [N/mm]", &StateResult::tension_min, 1, false},
    {"junction bending strain [%]", &StateResult::junction_bending_strain_max, 100, true},
    {"surface strain, most [%]", &StateResult::surface_strain_max, 100, true},
    {"wing line force [N/mm]", &StateResult::wing_line_force_max, 1, true},
    {"force on one roll [kN]", &StateResult::roll_force_max, 1e-3, true},
};

/// The state in which a reading is at its worst; null if no state has it.
const StateResult* worst_state(const TransitionResult& result, const Extreme& extreme) {
    const StateResult* worst = nullptr;
    for (const StateResult& state : result.states) {
        const double value = (state.*extreme.reading).value;
        if (!converged(state) || !std::isfinite(value)) continue;
        const double sign = extreme.largest ? 1 : -1;
        if (worst == nullptr || sign * value > sign * (worst->*extreme.reading).value) worst = &state;
    }
    return worst;
}

/// "edge +y", "both edges", "centre line", "y 243", "|y| 238 junction". Half a model stands for both sides.
std::string place_across(double y, const TransitionCase& transition) {
    const bool both = transition.settings.model == Symmetry::half;
    const double distance = std::abs(y);
    const std::string side = y > 0 ? " +y" : " -y";
    if (distance < 0.5) return "centre line";
    if (distance > transition.belt.width / 2 - 0.5) return both ? "both edges" : "edge" + side;
    const std::string at = both ? fmt::format("|y| {:.0f}", distance) : fmt::format("y {:.0f}", y);
    const bool junction = std::ranges::any_of(
        transition.layout.junctions(), [&](double place) { return std::abs(distance - place) < 0.05 * transition.belt.width; });
    return junction ? at + " junction" : at;
}

std::string error_cell(const std::optional<double>& error, double factor) {
    return error ? significant(std::abs(*error) * factor, 2) : "-";
}

TextRow row_of(const Extreme& extreme, const StateResult& state, const TransitionCase& transition) {
    const Reading& reading = state.*extreme.reading;
    return {extreme.title,
            significant(reading.value * extreme.factor),
            error_cell(reading.error, extreme.factor),
            error_cell(reading.far_end_error, extreme.factor),
            fmt::format("{:.0f}", reading.x),
            place_across(reading.y, transition),
            shortened(printable(state.name), 16)};
}

/// "1 mm before the first full set", from the nearer landmark; at the border of what is left out next to a stuck or held line.
std::string place_along(const StateResult& state, double x, const TransitionLayout& layout) {
    if (std::abs(x - state.excluded) < 1)
        return fmt::format(
            "{:.0f} mm from the pulley, where reading begins (at the line itself the corner's strain is singular)", x);
    if (x < layout.distance / 2) return fmt::format("{:.0f} mm from the pulley", x);
    const double before = layout.distance - x;
    return fmt::format("{:.0f} mm {} the first full set", std::abs(before), before >= 0 ? "before" : "beyond");
}

}  // namespace

std::string why_edges_stretch(const RunRecord& record) {
    const StateResult* state = worst_state(record.result, extremes[0]);
    if (state == nullptr) return {};
    const Reading& edge = state->edge_strain_max;
    if (!(edge.value > state->far_strain)) return {};
    return fmt::format(
        "Why: the edge travels further than the centre. In \"{}\" it stretches {} % beyond the mean of {} %, most {}.",
        printable(state->name), significant((edge.value - state->far_strain) * 100), significant(state->far_strain * 100),
        place_along(*state, edge.x, record.transition.layout));
}

std::vector<TextRow> place_rows(const RunRecord& record) {
    std::vector<TextRow> rows = {{"Where", "value", "+-grid", "+-far", "x [mm]", "across [mm]", "state"}};
    for (const Extreme& extreme : extremes)
        if (const StateResult* state = worst_state(record.result, extreme))
            rows.push_back(row_of(extreme, *state, record.transition));
    return rows;
}

std::string places_section(const RunRecord& record) {
    const std::vector<TextRow> rows = place_rows(record);
    if (rows.size() == 1) return {};
    const std::string why = why_edges_stretch(record);
    return text_table(rows, "lrrrrll") +
           "  x from the pulley, unstretched belt; +- estimated errors of the grid and of the far end\n" +
           (why.empty() ? why : wrapped(why));
}

}  // namespace swale
