#include "io/report/study/study_cases.h"

#include "io/chart/chart_pictures.h"
#include "io/report/html.h"
#include "io/report/study/case_grid.h"
#include "io/report/study/study_counts.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace swale {

namespace {

constexpr std::size_t most_listed = 300, most_failed = 60;

const char* outcome_word(CaseOutcome outcome) {
    static constexpr const char* words[] = {"within limits", "over a limit", "not converged", "bad input", "fault"};
    return words[static_cast<int>(outcome)];
}

TextRow head_row(const StudyRecord& record, const std::vector<std::string>& more) {
    TextRow head{"Case"};
    for (const std::string& axis : record.table.axes) head.push_back(shortened(axis_words(axis, "").name, 40));
    head.insert(head.end(), more.begin(), more.end());
    return head;
}

TextRow labels_row(const StudyRecord& record, std::size_t k) {
    TextRow row{std::to_string(record.cases[k].number)};
    for (const std::string& label : record.table.cases[k].labels) row.push_back(shortened(label, 60));
    return row;
}

std::string list_alignment(const StudyRecord& record, const std::string& behind) {
    return "r" + std::string(record.table.axes.size(), 'l') + behind;
}

std::string share_text(const ChartedCase& charted) {
    const double share = share_used(charted);
    return std::isfinite(share) ? fmt::format("{:.0f}", 100 * share) : "-";
}

// Those nearest to the limit first taken, then in their order.
CaseList listed_cases(const StudyRecord& record) {
    CaseList cases = all_cases(record);
    std::erase_if(cases, [&](std::size_t k) { return !record.cases[k].solved(); });
    if (cases.size() <= most_listed) return cases;
    std::ranges::stable_sort(cases, {}, [&](std::size_t k) {
        const double off = std::abs(share_used(record.table.cases[k]) - 1);
        return std::isfinite(off) ? off : INFINITY;
    });
    cases.resize(most_listed);
    std::ranges::sort(cases);
    return cases;
}

std::string case_list(const StudyRecord& record) {
    std::vector<TextRow> rows{head_row(record, {"verdict", "share [%]", "limit that binds"})};
    const CaseList cases = listed_cases(record);
    for (const std::size_t k : cases) {
        rows.push_back(labels_row(record, k));
        const ChartedCase& charted = record.table.cases[k];
        rows.back().insert(rows.back().end(),
                           {outcome_word(record.cases[k].outcome), share_text(charted), shortened(binding_limit(charted), 90)});
    }
    const int solved = count_outcomes(record, all_cases(record)).solved();
    const std::string cut = static_cast<int>(cases.size()) < solved
                                ? fmt::format(" The {} of {} nearest to a limit; the database holds all.", cases.size(), solved)
                                : "";
    return html_table("Solved cases; share: what is used of the limit that binds, its estimated error on top." + cut, rows,
                      list_alignment(record, "lrl"));
}

// A reason without its numbers, so that those that differ in them alone count as one.
std::string kind_of(const std::string& reason) {
    std::string kind;
    for (const char letter : reason) {
        const bool digit = letter >= '0' && letter <= '9';
        if (!digit || kind.empty() || kind.back() != '#') kind += digit ? '#' : letter;
    }
    return kind;
}

std::string reasons_table(const StudyRecord& record, const CaseList& failed) {
    std::map<std::string, std::pair<int, std::size_t>> kinds;  // how many, and the first of them
    for (const std::size_t k : failed) {
        const std::string kind = outcome_word(record.cases[k].outcome) + kind_of(record.cases[k].reason);
        ++kinds.emplace(kind, std::pair{0, k}).first->second.first;
    }
    std::vector<TextRow> rows{{"Cases", "outcome", "first", "its reason"}};
    for (const auto& [kind, entry] : kinds) {
        const StudyCase& first = record.cases[entry.second];
        rows.push_back({std::to_string(entry.first), outcome_word(first.outcome), std::to_string(first.number),
                        shortened(first.reason, 600)});
        if (rows.size() > most_failed) break;
    }
    return html_table("Reasons; those that differ in numbers alone are counted as one", rows, "rlrl");
}

}  // namespace

std::string study_cases_section(const StudyRecord& record) {
    const std::string grid = case_grid(record);
    return section("cases", "The cases", grid.empty() ? case_list(record) : grid);
}

std::string failed_cases_section(const StudyRecord& record) {
    CaseList failed = all_cases(record);
    std::erase_if(failed, [&](std::size_t k) { return record.cases[k].solved(); });
    if (failed.empty())
        return section("open", "Cases without a solution", paragraph("None: every case here was solved in every state."));
    std::vector<TextRow> rows{head_row(record, {"outcome", "reason"})};
    for (const std::size_t k : failed) {
        if (rows.size() > most_failed) break;
        rows.push_back(labels_row(record, k));
        rows.back().insert(rows.back().end(), {outcome_word(record.cases[k].outcome), shortened(record.cases[k].reason, 400)});
    }
    std::string body =
        reasons_table(record, failed) + html_table("Each case without a solution", rows, list_alignment(record, "ll"));
    if (failed.size() > most_failed)
        body +=
            paragraph(fmt::format("The first {} of {}; the database holds the reason of each.", most_failed, failed.size()));
    return section("open", "Cases without a solution", body);
}

}  // namespace swale
