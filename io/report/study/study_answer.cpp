#include "io/report/study/study_answer.h"

#include "io/chart/chart_pictures.h"
#include "io/markup_text.h"
#include "io/report/html.h"
#include "io/report/study/study_counts.h"
#include "io/terminal/cautions.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// "distance (0.75 to 8.5 belt widths, 8 values)"
std::string axis_text(const StudyRecord& record, std::size_t axis) {
    const std::vector<std::string> values = axis_values(record, axis);
    const std::string& key = record.table.axes[axis];
    const std::string name = shortened(axis_words(key, "").name, 60);
    if (values.empty()) return name;
    const auto words = [&](const std::string& label) { return shortened(label_words(key, label), 60); };
    if (values.size() == 1) return fmt::format("{} ({})", name, words(values.front()));
    if (!numbers_of_one_unit(values)) return fmt::format("{} ({} choices)", name, values.size());
    return fmt::format("{} ({:.4g} to {}, {} values)", name, label_number(values.front()), words(values.back()), values.size());
}

std::string binding_words(const StudyRecord& record, const CaseList& cases) {
    const auto limits = binding_limits(record, cases);
    return limits.empty() ? "" : fmt::format("{} ({})", limits.front().limit, limits.front().count);
}

CaseList those_over(const StudyRecord& record) {
    CaseList cases;
    for (std::size_t k = 0; k < record.cases.size(); ++k)
        if (record.cases[k].outcome == CaseOutcome::over) cases.push_back(k);
    return cases;
}

std::string outcome_sentence(const StudyRecord& record, const OutcomeCounts& counts) {
    const CaseList over = those_over(record);
    std::string text = counts.all() == record.planned
                           ? ""
                           : fmt::format("The database holds {} of {} cases so far. ", counts.all(), record.planned);
    text += fmt::format("Solved in every state: {} of {} cases; every limit holds in {}, one or more is exceeded in {}",
                        counts.solved(), counts.all(), counts.within, counts.over);
    const std::string binding = binding_words(record, over);
    if (!binding.empty()) text += ", most often farthest: " + shortened(binding, 120);
    if (counts.not_converged > 0) text += fmt::format("; {} did not converge", counts.not_converged);
    if (counts.not_solved > 0) text += fmt::format("; {} can't be solved as they stand", counts.not_solved);
    return text + (counts.all() > counts.solved() ? "; each of these is listed with its reason." : ".");
}

std::string most_of(const std::vector<HandMethodCount>& methods, int HandMethodCount::*kind, const std::string& what) {
    const auto most = std::ranges::max_element(methods, {}, kind);
    if (most == methods.end() || (*most).*kind == 0) return {};
    return fmt::format(" Of the hand methods \"{}\" {} most often, in {} of {} cases.", most->name, what, (*most).*kind,
                       most->all());
}

// Absent where no hand method is off.
std::string hand_method_sentence(const StudyRecord& record) {
    const std::vector<HandMethodCount> methods = count_hand_methods(record);
    return most_of(methods, &HandMethodCount::unsafe, "takes a distance for enough where a limit is exceeded") +
           most_of(methods, &HandMethodCount::wasteful, "asks for more where every limit holds");
}

std::string verdict_block(const StudyRecord& record) {
    const OutcomeCounts counts = count_outcomes(record, all_cases(record));
    const char* look = counts.solved() == 0 ? "open" : counts.within == 0 ? "over" : "within";
    return fmt::format("<div class=\"verdict {}\" role=\"status\"><p class=\"word\">{} OF {} CASES PASS</p><p>{}</p></div>\n",
                       look, counts.within, counts.all(),
                       foreign(well_set(outcome_sentence(record, counts) + hand_method_sentence(record))));
}

// "12 to 117", of the limit that binds.
std::string shares_text(const StudyRecord& record, const CaseList& cases) {
    double low = INFINITY, high = -INFINITY;
    for (const std::size_t k : cases) {
        const double share = record.cases[k].solved() ? share_used(record.table.cases[k]) : NAN;
        if (!std::isfinite(share)) continue;
        low = std::min(low, share);
        high = std::max(high, share);
    }
    if (low > high) return "-";
    const std::string from = fmt::format("{:.0f}", 100 * low), to = fmt::format("{:.0f}", 100 * high);
    return from == to ? from : from + " to " + to;
}

std::string axis_rows(const StudyRecord& record, std::size_t axis) {
    std::string rows = fmt::format("<tr class=\"axis\"><th scope=\"colgroup\" colspan=\"6\">{}</th></tr>\n",
                                   foreign(shortened(axis_words(record.table.axes[axis], "").name, 120)));
    for (const AxisPart& part : axis_parts(record, axis)) {
        const OutcomeCounts counts = count_outcomes(record, part.cases);
        const int open = counts.not_converged + counts.not_solved;
        rows += fmt::format(
            "<tr><th scope=\"row\">{}</th><td class=\"number\">{}</td><td class=\"number{}\">{}</td><td "
            "class=\"number\">{}</td><td class=\"number\">{}</td><td>{}</td></tr>\n",
            foreign(shortened(part.label, 80)), counts.within, counts.over > 0 ? " over" : "", counts.over, open,
            shares_text(record, part.cases), foreign(shortened(binding_words(record, part.cases), 90)));
    }
    return rows;
}

std::string table_by_axes(const StudyRecord& record) {
    const std::string caption =
        "Verdicts by what was varied, each value over all others; share: what is used of the limit that binds, its estimated "
        "error on top";
    std::string text =
        "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Verdicts\"><table "
        "class=\"verdicts\"><caption><span>" +
        caption +
        "</span></caption>\n<thead><tr><th scope=\"col\">Value</th><th scope=\"col\" class=\"number\">pass</th><th "
        "scope=\"col\" class=\"number\">over</th><th scope=\"col\" class=\"number\">open</th><th scope=\"col\" "
        "class=\"number\">share [%]</th><th scope=\"col\">limit that binds most often (cases)</th></tr></thead>\n";
    for (std::size_t axis = 0; axis < record.table.axes.size(); ++axis)
        text += "<tbody>" + axis_rows(record, axis) + "</tbody>\n";
    return text + "</table></div>\n";
}

}  // namespace

std::string study_question(const StudyRecord& record) {
    std::string varied;
    for (std::size_t axis = 0; axis < record.table.axes.size(); ++axis)
        varied += (axis == 0 ? "" : axis + 1 < record.table.axes.size() ? ", " : " and ") + axis_text(record, axis);
    return fmt::format("Which of {} cases hold every limit, as {} var{}?", record.planned, varied,
                       record.table.axes.size() == 1 ? "ies" : "y");
}

std::string study_answer(const StudyRecord& record, const StudyFigures& figures) {
    const bool beside = !figures.opening.empty();
    return "<section id=\"answer\" aria-label=\"Answer\">\n" + verdict_block(record) +
           (beside ? "<div class=\"first\">\n<div>" : "<div>\n<div>") + table_by_axes(record) + "</div>\n<div>" +
           figures.opening + paragraph(cautions, "caution") + "</div>\n</div>\n</section>\n";
}

}  // namespace swale
