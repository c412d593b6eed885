#include "io/terminal/state_table.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"
#include "io/verdict.h"

#include <algorithm>

namespace swale {

namespace {

std::string table_of(const std::vector<std::string>& head, const std::vector<StateLine>& lines,
                     const std::vector<StateResult>& states, size_t first, size_t last) {
    std::vector<TextRow> rows = {head};
    for (size_t i = first; i < last; ++i) rows.front().push_back(shortened(printable(states[i].name), 18));
    for (const StateLine& line : lines) {
        rows.push_back(line.head);
        for (size_t i = first; i < last; ++i)
            rows.back().push_back(converged(states[i]) ? line.cell(states[i]) : "no solution");
    }
    return text_table(rows, head.size() == 1 ? "lr" : "llr");
}

}  // namespace

std::string state_table(const std::vector<std::string>& head, const std::vector<StateLine>& lines,
                        const std::vector<StateResult>& states) {
    std::string text;
    for (size_t first = 0; first < states.size();) {
        size_t last = states.size();
        std::string table = table_of(head, lines, states, first, last);
        while (last > first + 1 && widest_line(table) > line_length) table = table_of(head, lines, states, first, --last);
        text += (first == 0 ? "" : "\n") + table;
        first = last;
    }
    return text;
}

}  // namespace swale
