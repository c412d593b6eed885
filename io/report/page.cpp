#include "io/report/page.h"

#include "io/markup_text.h"
#include "io/report/html.h"
#include "io/report/page_parts.h"
#include "io/version.h"

#include <fmt/format.h>

namespace swale {

namespace {

/// JSON inside a script element: "<" could end it, and two line separators are line ends to old scripts.
std::string inside_script(const std::string& json) {
    std::string safe;
    safe.reserve(json.size());
    for (size_t i = 0; i < json.size(); ++i) {
        const bool separator =
            json.compare(i, 2, "\xE2\x80") == 0 && i + 2 < json.size() && (json[i + 2] == '\xA8' || json[i + 2] == '\xA9');
        if (separator) {
            safe += json[i + 2] == '\xA8' ? "\\u2028" : "\\u2029";
            i += 2;
        } else if (json[i] == '<') {
            safe += "\\u003c";
        } else {
            safe += json[i];
        }
    }
    return safe;
}

std::string policy(const Page& page) {
    const std::string scripts = page.data.empty() ? "'none'" : std::string(page_parts::script_hash);
    return fmt::format("default-src 'none'; script-src {}; style-src {}; img-src data:; base-uri 'none'; form-action 'none'",
                       scripts, page_parts::style_hash);
}

std::string script_elements(const Page& page) {
    if (page.data.empty()) return {};
    return "<script type=\"application/json\" id=\"report-data\">" + inside_script(page.data) + "</script>\n<script>" +
           std::string(page_parts::script) + "</script>\n";
}

std::string licences(const Page& page) {
    if (page.data.empty()) return {};
    return "<details class=\"licences\"><summary>Licences of what this page's script contains</summary><pre>" +
           escaped_lines(page_parts::licences) + "</pre></details>\n";
}

}  // namespace

std::string escaped_lines(std::string_view text) {
    std::string safe;
    for (size_t from = 0; from <= text.size();) {
        const size_t to = std::min(text.find('\n', from), text.size());
        safe += escaped(std::string(text.substr(from, to - from))) + "\n";
        from = to + 1;
    }
    return safe;
}

std::string page_html(const Page& page) {
    std::string html = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
    html += "<meta http-equiv=\"Content-Security-Policy\" content=\"" + policy(page) + "\">\n";
    html += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
    html += "<meta name=\"generator\" content=\"swale " + version() + "\">\n<link rel=\"icon\" href=\"data:,\">\n";
    html +=
        "<title>" + escaped(page.title) + "</title>\n<style>" + std::string(page_parts::style) + "</style>\n</head>\n<body>\n";
    html +=
        "<a class=\"skip\" href=\"#answer\">To the answer</a>\n<header>\n<p class=\"kind\">Belt transition report</p>\n<h1>" +
        foreign(page.title) + "</h1>\n";
    if (!page.question.empty()) html += paragraph(page.question, "question");
    html += "</header>\n<main>\n" + page.body + "</main>\n<footer>\n<p>Made by swale " + version() + ".</p>\n" +
            licences(page) + "</footer>\n";
    return html + script_elements(page) + "</body>\n</html>\n";
}

}  // namespace swale
