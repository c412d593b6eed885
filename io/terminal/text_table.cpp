#include "io/terminal/text_table.h"

#include "io/terminal/plain_text.h"

#include <algorithm>
#include <sstream>

namespace swale {

namespace {

std::vector<int> widths_of(const std::vector<TextRow>& rows) {
    std::vector<int> widths;
    for (const TextRow& row : rows) {
        widths.resize(std::max(widths.size(), row.size()), 0);
        for (size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], text_width(row[i]));
    }
    return widths;
}

std::string line_of(const TextRow& row, const std::vector<int>& widths, const std::string& alignment) {
    std::string line;
    for (size_t i = 0; i < row.size(); ++i) {
        const std::string gap(static_cast<size_t>(widths[i] - text_width(row[i])), ' ');
        const char side = alignment[std::min(i, alignment.size() - 1)];
        line += "  " + (side == 'l' ? row[i] + gap : gap + row[i]);
    }
    return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

}  // namespace

std::string text_table(const std::vector<TextRow>& rows, const std::string& alignment) {
    const std::vector<int> widths = widths_of(rows);
    std::string text;
    for (const TextRow& row : rows) text += line_of(row, widths, alignment);
    return text;
}

int widest_line(const std::string& text) {
    std::istringstream lines(text);
    int widest = 0;
    for (std::string line; std::getline(lines, line);) widest = std::max(widest, text_width(line));
    return widest;
}

}  // namespace swale
