#include "io/wear/page_text.h"

#include "io/markup_text.h"
#include "io/report/page_parts.h"

namespace swale {

namespace {

// What drawings of rolls and the field sheet have besides the style of all reports.
constexpr const char* style = R"(
main { padding-top: 1.4rem; }
main svg { display: block; width: 100%; height: auto; } main svg text { font: 12px var(--sans); fill: var(--ink); } .small { font-size: .88rem; }
td svg { min-width: 6rem; max-width: 300px; }
.roll { fill: #dcdcdc; stroke: #444; } .shaft { fill: #aaa; stroke: #444; } .worn { fill: #7a4a1e; } .unworn { fill: #f4f1e6; }
.unsure { fill: #f4f1e6; stroke: #7a4a1e; stroke-dasharray: 4 3; } .observed { fill: #7a4a1e; } .depth { stroke: #7a4a1e; stroke-width: 5; }
.predicted { fill: none; stroke: var(--accent); stroke-width: 2; } .spread { fill: var(--accent); opacity: .18; } .axis { stroke: #666; }
.faint { stroke: #bbb; stroke-dasharray: 3 4; } .belt { fill: none; stroke: var(--ink); stroke-width: 5; } .likely { fill: var(--accent); }
@media screen and (max-width: 60rem) { .wide > svg { width: 100%; min-width: 40rem; } }
.blank { width: 100%; } .blank td, .blank th { border: 1px solid #444; padding: .2em .4em; height: 1.35rem; }
@media print { .wide > svg { break-inside: avoid; width: 100%; }
  .sheet { font-size: 8.2pt; line-height: 1.25; } .sheet h1 { font-size: 13pt; } .sheet h2 { margin: .35rem 0 .15rem; padding-top: .15rem; font-size: 10pt; }
  .sheet p, .sheet ul, .sheet table { margin: .2rem 0; max-width: none; } .sheet li { max-width: none; } .sheet .caution { font-size: 1em; } .sheet .small { font-size: 7.6pt; } }
)";

}  // namespace

std::string html_page(const std::string& title, const std::string& main_class, const std::string& body) {
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src "
           "data:\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<link rel=\"icon\" "
           "href=\"data:,\">\n<title>" +
           escaped(title) + "</title>\n<style>" + std::string(page_parts::style) + style +
           "</style>\n</head>\n<body>\n<main class=\"" + main_class + "\">\n" + body + "</main>\n</body>\n</html>\n";
}

}  // namespace swale
