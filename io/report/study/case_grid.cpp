#include "io/report/study/case_grid.h"

#include "io/chart/axis_choice.h"
#include "io/chart/chart_pictures.h"
#include "io/markup_text.h"
#include "io/report/html.h"
#include "io/report/study/study_counts.h"
#include "io/terminal/plain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace swale {

namespace {

constexpr std::size_t most_columns = 14;

/// What stands across, and each limit's letter.
struct GridLook {
    std::size_t across = 0;
    std::vector<std::string> columns;
    std::map<std::string, std::string> letters;
};

using Labels = std::vector<std::string>;
/// A row's cells by the label of their column; its name.
struct GridRow {
    Labels labels;  // that of the axis across is empty
    std::map<std::string, std::size_t> cells;
};

// The distance, or else the axis with most values of those with few; axes.size() if the cases are no grid.
std::size_t axis_across(const StudyRecord& record) {
    double product = 1;
    std::size_t across = record.table.axes.size(), most = 0;
    for (std::size_t axis = 0; axis < record.table.axes.size(); ++axis) {
        const std::size_t count = axis_values(record, axis).size();
        product *= static_cast<double>(count);
        const bool distance = record.table.axes[axis] == AxisNames{}.distance;
        if (count <= most_columns && (distance || count > most)) {
            across = axis;
            most = distance ? most_columns : count;
        }
    }
    return product <= record.planned ? across : record.table.axes.size();
}

// "A", "B", ..., "Z", "A1", ...
std::string letter_of(std::size_t place) {
    const std::string letter(1, static_cast<char>('A' + place % 26));
    return place < 26 ? letter : letter + std::to_string(place / 26);
}

std::vector<GridRow> rows_of(const StudyRecord& record, const GridLook& look) {
    std::vector<GridRow> rows;
    std::map<Labels, std::size_t> places;
    for (std::size_t k = 0; k < record.cases.size(); ++k) {
        Labels labels = record.table.cases[k].labels;
        const std::string column = std::exchange(labels[look.across], "");
        const auto [place, is_new] = places.emplace(labels, rows.size());
        if (is_new) rows.push_back({labels, {}});
        rows[place->second].cells[column] = k;
    }
    return rows;
}

std::string cell(const StudyRecord& record, const GridLook& look, const GridRow& row, const std::string& column) {
    const auto found = row.cells.find(column);
    if (found == row.cells.end()) return "<td></td>";
    const StudyCase& one = record.cases[found->second];
    const ChartedCase& charted = record.table.cases[found->second];
    if (!one.solved()) return "<td class=\"number\">open</td>";
    const double share = share_used(charted);
    if (!std::isfinite(share)) return "<td class=\"number\">-</td>";
    const bool over = one.outcome == CaseOutcome::over;
    return fmt::format("<td class=\"number{}\">{}{:.0f} {}</td>", over ? " over" : "", over ? "\u2716 " : "", 100 * share,
                       look.letters.at(binding_limit(charted)));
}

std::string row_name(const StudyRecord& record, const GridRow& row, std::size_t from) {
    std::string name;
    for (std::size_t axis = from; axis < row.labels.size(); ++axis)
        if (!row.labels[axis].empty())
            name += (name.empty() ? "" : ", ") + shortened(label_words(record.table.axes[axis], row.labels[axis]), 40);
    return name.empty() ? shortened(record.table.title, 60) : name;
}

// "trough angle, belt, belt tension"
std::string row_axes(const StudyRecord& record, const GridLook& look, std::size_t from) {
    std::string names;
    for (std::size_t axis = from; axis < record.table.axes.size(); ++axis)
        if (axis != look.across)
            names += (names.empty() ? "" : ", ") + shortened(axis_words(record.table.axes[axis], "").name, 40);
    return names;
}

std::string grid_table(const StudyRecord& record, const GridLook& look, const std::vector<GridRow>& rows,
                       const std::string& caption, std::size_t from) {
    std::string text = "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"" + escaped(caption) +
                       "\"><table class=\"grid\"><caption><span>" + foreign(caption) +
                       "</span></caption>\n<thead><tr><th scope=\"col\">" + foreign(row_axes(record, look, from)) + "</th>";
    const bool numbers = numbers_of_one_unit(look.columns);
    for (const std::string& column : look.columns)
        text += "<th scope=\"col\" class=\"number\">" +
                foreign(numbers ? fmt::format("{:.6g}", label_number(column)) : shortened(column, 30)) + "</th>";
    text += "</tr></thead>\n<tbody>\n";
    for (const GridRow& row : rows) {
        text += "<tr><th scope=\"row\">" + foreign(row_name(record, row, from)) + "</th>";
        for (const std::string& column : look.columns) text += cell(record, look, row, column);
        text += "</tr>\n";
    }
    return text + "</tbody></table></div>\n";
}

std::string key_table(const std::vector<BindingCount>& limits, const GridLook& look) {
    std::vector<TextRow> rows{{"Letter", "limit that binds", "cases"}};
    for (const BindingCount& limit : limits)
        rows.push_back({look.letters.at(limit.limit), shortened(limit.limit, 120), std::to_string(limit.count)});
    return rows.size() == 1 ? "" : html_table("The letters", rows, "llr");
}

std::string words_before(const StudyRecord& record, const GridLook& look) {
    const AxisWords words = axis_words(record.table.axes[look.across], look.columns.front());
    const bool numbers = numbers_of_one_unit(look.columns) && !words.unit.empty();
    return paragraph(fmt::format(
        "Across: {}. Each cell: what is used of the limit that binds, in %, its estimated error on top (a case within its "
        "limits can show a little more than 100), and that limit's letter; \u2716: over a limit; open: without a solution, "
        "see below.",
        shortened(words.name, 80) + (numbers ? " [" + words.unit + "]" : "")));
}

// By the first of the other axes where there are many rows.
std::string tables(const StudyRecord& record, const GridLook& look, const std::vector<GridRow>& rows) {
    const std::size_t first = look.across == 0 ? 1 : 0;
    const bool apart = rows.size() > 40 && record.table.axes.size() > 2;
    if (!apart) return grid_table(record, look, rows, "Share of the limit that binds [%]", 0);
    std::string text;
    for (const std::string& value : axis_values(record, first)) {
        std::vector<GridRow> of_value;
        std::ranges::copy_if(rows, std::back_inserter(of_value),
                             [&](const GridRow& row) { return row.labels[first] == value; });
        const std::string name =
            axis_words(record.table.axes[first], "").name + ": " + label_words(record.table.axes[first], value);
        text += grid_table(record, look, of_value, shortened(name, 120) + "; share of the limit that binds [%]", first + 1);
    }
    return text;
}

}  // namespace

std::string case_grid(const StudyRecord& record) {
    const std::size_t across = axis_across(record);
    if (across == record.table.axes.size() || record.cases.empty()) return {};
    GridLook look{across, axis_values(record, across), {}};
    const std::vector<BindingCount> limits = binding_limits(record, all_cases(record));
    for (std::size_t k = 0; k < limits.size(); ++k) look.letters[limits[k].limit] = letter_of(k);
    return words_before(record, look) + key_table(limits, look) + tables(record, look, rows_of(record, look));
}

}  // namespace swale
