#include "io/report/html.h"

#include "io/markup_text.h"
#include "io/picture/svg.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace swale {

namespace {

std::string class_attribute(const std::string& css_class) {
    return css_class.empty() ? "" : " class=\"" + css_class + "\"";
}

char alignment_of(const std::string& alignment, size_t column) {
    return alignment[std::min(column, alignment.size() - 1)];
}

std::string table_row(const TextRow& row, const std::string& alignment, bool head) {
    std::string text = "<tr>";
    for (size_t i = 0; i < row.size(); ++i) {
        const bool header = head || i == 0;
        const std::string scope = head ? " scope=\"col\"" : i == 0 ? " scope=\"row\"" : "";
        text += fmt::format("<{0}{1}{2}>{3}</{0}>", header ? "th" : "td", scope,
                            class_attribute(alignment_of(alignment, i) == 'r' ? "number" : ""), foreign(row[i]));
    }
    return text + "</tr>\n";
}

}  // namespace

std::string foreign(const std::string& text) {
    return text.empty() ? text : "<bdi>" + escaped(text) + "</bdi>";
}

std::string well_set(std::string text) {
    static const std::pair<std::string, std::string> signs[] = {{"<=", "\u2264"}, {">=", "\u2265"}, {"+-", "\u00b1"},
                                                                {"^2", "\u00b2"}, {"^3", "\u00b3"}, {" %", "\u00a0%"}};
    for (const auto& [plain, sign] : signs)
        for (size_t at = text.find(plain); at != std::string::npos; at = text.find(plain, at + sign.size()))
            text.replace(at, plain.size(), sign);
    return text;
}

std::string paragraph(const std::string& text, const std::string& css_class) {
    return "<p" + class_attribute(css_class) + ">" + foreign(text) + "</p>\n";
}

std::string html_table(const std::string& caption, const std::vector<TextRow>& rows, const std::string& alignment) {
    TextRow head = rows.at(0);
    std::ranges::transform(head, head.begin(), well_set);
    std::string text = "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"" + escaped(caption) +
                       "\"><table><caption><span>" + escaped(caption) + "</span></caption>\n<thead>" +
                       table_row(head, alignment, true) + "</thead>\n<tbody>\n";
    for (size_t i = 1; i < rows.size(); ++i) text += table_row(rows[i], alignment, false);
    return text + "</tbody></table></div>\n";
}

std::string html_list(const std::vector<std::string>& sentences) {
    if (sentences.empty()) return {};
    std::string text = "<ul>\n";
    for (const std::string& sentence : sentences) text += "<li>" + foreign(sentence) + "</li>\n";
    return text + "</ul>\n";
}

std::string figure(const Drawing& drawing, const std::string& caption, const std::string& name) {
    return "<figure>\n<div class=\"wide\">" + svg(drawing, name) + "</div>\n<figcaption>" + foreign(caption) +
           "</figcaption>\n</figure>\n";
}

std::string section(const std::string& id, const std::string& heading, const std::string& body) {
    return fmt::format("<section id=\"{0}\" aria-labelledby=\"{0}-heading\">\n<h2 id=\"{0}-heading\">{1}</h2>\n{2}</section>\n",
                       id, escaped(heading), body);
}

}  // namespace swale
