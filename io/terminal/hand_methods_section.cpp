#include "io/terminal/hand_methods_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

std::string percent(const std::optional<double>& strain) {
    return strain ? significant(*strain * 100) : "-";
}

TextRow row_of(const HandMethod& method, const TransitionLayout& layout) {
    TextRow row{method.name, "-", "-", "", percent(method.edge_strain), percent(method.centre_strain)};
    if (!method.minimum_distance) return row;
    row[1] = fmt::format("{:.0f}", *method.minimum_distance);
    row[2] = fmt::format("{:.2f}", *method.minimum_distance / layout.belt_width);
    row[3] = *method.minimum_distance <= layout.distance ? "enough" : "too short";
    return row;
}

std::vector<TextRow> rows_of(const TransitionLayout& layout, const Screening& screening) {
    std::vector<TextRow> rows{
        {"Hand methods", "needs [mm]", "widths", fmt::format("{:.0f} mm is", layout.distance), "edge [%]", "centre [%]"}};
    for (const HandMethod& method : screening.methods) rows.push_back(row_of(method, layout));
    return rows;
}

constexpr const char* columns = "lrrlrr";

constexpr const char* what_strains_are =
    "  edge strain under the highest tension, centre strain under the lowest, at the case's own distance\n";

// The largest edge and the least centre strain of the states that converged.
TextRow shell_row(const TransitionResult& result) {
    std::optional<double> edge, centre;
    for (const StateResult& state : result.states) {
        if (!converged(state)) continue;
        edge = std::max(edge.value_or(state.edge_strain_max.value), state.edge_strain_max.value);
        centre = std::min(centre.value_or(state.centre_strain_min.value), state.centre_strain_min.value);
    }
    return {"shell", "", "", "", percent(edge), percent(centre)};
}

}  // namespace

std::string hand_methods_table(const TransitionCase& transition, const Screening& screening) {
    return text_table(rows_of(transition.layout, screening), columns) + what_strains_are;
}

std::string hand_methods_remarks(const Screening& screening) {
    std::string text;
    for (const HandMethod& method : screening.methods)
        text += "  - " + wrapped(fmt::format("{}: {}. Holds for {}. Source: {}", method.name, method.remark, method.validity,
                                             method.source),
                                 4);
    if (screening.neutral_lift)
        text += "  - " + wrapped(fmt::format("straight strips strain edge and centre alike at a pulley lift of {:.0f} mm",
                                             *screening.neutral_lift),
                                 4);
    for (const std::string& rule : screening.practice) text += "  - " + wrapped("practice: " + rule, 4);
    return text;
}

std::string hand_methods_section(const TransitionCase& transition, const TransitionResult& result) {
    std::vector<TextRow> rows = rows_of(transition.layout, screen(transition));
    rows.push_back(shell_row(result));
    std::string text = text_table(rows, columns) + what_strains_are;
    for (const std::string& said : compare(transition, result.states)) text += "  - " + wrapped(said, 4);
    return text + "  sources and remarks: swale screen\n";
}

}  // namespace swale
