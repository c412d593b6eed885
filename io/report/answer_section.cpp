#include "io/report/answer_section.h"

#include "io/markup_text.h"
#include "io/report/belt_picture.h"
#include "io/report/html.h"
#include "io/terminal/cautions.h"
#include "io/terminal/criteria_lines.h"
#include "io/terminal/headline.h"
#include "io/terminal/places_section.h"
#include "io/terminal/plain_text.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

/// A bar as long as the share of the limit used, with a tick at the limit; past it the bar goes on to at most half as much
/// again.
std::string share_bar(double utilisation, bool over) {
    const double length = std::clamp(utilisation, 0.0, 1.5) * 40;
    return fmt::format(
        "<svg class=\"share\" viewBox=\"0 0 62 8\" width=\"62\" height=\"8\" aria-hidden=\"true\"><path d=\"M0 7.5H60\" "
        "class=\"ground\"/><path d=\"M0 4H{:.1f}\" class=\"{}\"/><path d=\"M40 0V8\" class=\"limit\"/></svg>",
        length, over ? "bar over" : "bar");
}

std::string criterion_cell(const Judgement* judgement) {
    if (judgement == nullptr || !judgement->value) return "<td class=\"number\">-</td>";
    const bool over = over_a_limit(*judgement), warns = over_an_advisory_limit(*judgement);
    std::string text = fmt::format("<td class=\"number{}\"><span class=\"value\">{}</span>",
                                   over    ? " over"
                                   : warns ? " warns"
                                           : "",
                                   significant(*judgement->value * print_scale(*judgement).factor));
    if (judgement->utilisation)
        text += fmt::format(" <span class=\"percent\">{:.0f} %</span>{}", *judgement->utilisation * 100,
                            share_bar(*judgement->utilisation, over || warns));
    if (over) text += "<span class=\"word\">over</span>";
    if (warns) text += "<span class=\"word\">over, advisory</span>";
    if (undecided(*judgement)) text += "<span class=\"word\">within its error of the limit</span>";
    return text + "</td>";
}

std::string criterion_row(const TransitionResult& result, const std::string& name) {
    const std::string unit = print_scale(first_with_limit(result.criteria, name)).unit;
    std::string row = "<tr><th scope=\"row\">" + foreign(name) +
                      (unit.empty() ? "" : " <span class=\"unit\">" + escaped(well_set(unit)) + "</span>") +
                      "</th><td class=\"limit\">" + foreign(well_set(limit_text(result.criteria, name))) + "</td>";
    for (const StateResult& state : result.states)
        row += converged(state) ? criterion_cell(find_judgement(result.criteria, name, state.name))
                                : "<td class=\"number\">no solution</td>";
    return row + "</tr>\n";
}

std::string given_row(const TransitionResult& result, const std::string& name, const std::string& unit,
                      double StateResult::*value, double factor) {
    std::string row =
        "<tr><th scope=\"row\">" + name + " <span class=\"unit\">" + unit + "</span></th><td class=\"limit\"></td>";
    for (const StateResult& state : result.states)
        row += "<td class=\"number\">" + (converged(state) ? significant(state.*value * factor) : std::string("-")) + "</td>";
    return row + "</tr>\n";
}

std::string criteria_table(const TransitionResult& result) {
    std::string head = "<tr><th scope=\"col\">Criterion</th><th scope=\"col\">Limit</th>";
    for (const StateResult& state : result.states)
        head += "<th scope=\"col\" class=\"number\">" + foreign(state.name) + "</th>";
    std::string with_limit, without;
    for (const std::string& name : criterion_names(result.criteria))
        (first_with_limit(result.criteria, name).limit ? with_limit : without) += criterion_row(result, name);
    const std::string caption =
        "Criteria against their limits by operating state; bars show the share of the limit used, the tick is the limit";
    return "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Criteria\"><table "
           "class=\"criteria\"><caption><span>" +
           caption + "</span></caption>\n<thead>" + head + "</tr></thead>\n<tbody>\n" +
           given_row(result, "belt tension, total", "kN", &StateResult::tension, 1e-3) +
           given_row(result, "mean strain at the far end", "%", &StateResult::far_strain, 100) + with_limit +
           "</tbody>\n<tbody class=\"reported\">\n" + without + "</tbody></table></div>\n";
}

std::string verdict_block(const TransitionResult& result) {
    static constexpr const char* classes[] = {"within", "over", "", "open"};
    const std::string text = headline(result);
    const size_t colon = text.find(':');
    std::string sentence = text.substr(std::min(text.size(), colon + 2));
    if (!sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z') sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
    return fmt::format("<div class=\"verdict {}\" role=\"status\"><p class=\"word\">{}</p><p>{}</p></div>\n",
                       classes[exit_code(result)], escaped(text.substr(0, colon)), foreign(well_set(sentence)));
}

std::string opening_picture(const RunRecord& record) {
    const int leading = leading_state(record.result);
    if (leading < 0) return {};
    const StateResult& state = record.result.states[static_cast<size_t>(leading)];
    if (state.surface.points.empty()) return {};
    return figure(
        belt_picture(record, state, 560),
        "The belt in \"" + state.name +
            "\", from the pulley to just behind the first full set. Colours: longitudinal strain, as on the map below.");
}

}  // namespace

int leading_state(const TransitionResult& result) {
    const Judgement* nearest = nullptr;
    for (const Judgement& judgement : result.criteria) {
        const bool shown =
            std::ranges::any_of(result.states, [&](const StateResult& s) { return converged(s) && s.name == judgement.state; });
        if (shown && judgement.utilisation && (nearest == nullptr || *judgement.utilisation > *nearest->utilisation))
            nearest = &judgement;
    }
    for (size_t i = 0; i < result.states.size(); ++i)
        if (converged(result.states[i]) && (nearest == nullptr || result.states[i].name == nearest->state))
            return static_cast<int>(i);
    return -1;
}

std::string answer_section(const RunRecord& record) {
    const std::string why = why_edges_stretch(record);
    constexpr size_t most_beside = 4;  // states for which a table has room beside the picture
    const char* look = record.result.states.size() > most_beside ? "first wide-table" : "first";
    return "<section id=\"answer\" aria-label=\"Answer\">\n" + verdict_block(record.result) + "<div class=\"" + look +
           "\">\n<div>" + criteria_table(record.result) + "</div>\n<div>" + opening_picture(record) +
           (why.empty() ? "" : paragraph(well_set(why))) + paragraph(cautions, "caution") + "</div>\n</div>\n</section>\n";
}

}  // namespace swale
