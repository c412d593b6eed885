#include "io/wear/page_text.h"

#include "io/markup_text.h"

namespace swale {

namespace {

// The one style sheet of the page of wear and of the field sheet.
constexpr const char* style = R"(
body { font: 15px/1.45 Georgia, serif; color: #222; max-width: 62em; margin: 2em auto; padding: 0 1em; }
h1 { font-size: 1.5em; margin: 0; } h2 { font-size: 1.15em; margin: 1.6em 0 .4em; border-bottom: 1px solid #999; }
.verdict { font-size: 1.15em; font-weight: bold; margin: .6em 0; }
table { border-collapse: collapse; } td, th { padding: .15em .7em .15em 0; text-align: left; vertical-align: top; }
td.number { text-align: right; font-variant-numeric: tabular-nums; }
ul { margin: .3em 0; padding-left: 1.3em; } .small { font-size: .85em; color: #555; }
.caution { border: 2px solid #222; padding: .5em .9em; margin: 1em 0; }
svg { width: 100%; height: auto; } svg text { font: 12px Georgia, serif; fill: #222; }
.roll { fill: #dcdcdc; stroke: #444; } .shaft { fill: #aaa; stroke: #444; } .worn { fill: #7a4a1e; } .unworn { fill: #f4f1e6; }
.unsure { fill: #f4f1e6; stroke: #7a4a1e; stroke-dasharray: 4 3; } .observed { fill: #7a4a1e; } .depth { stroke: #7a4a1e; stroke-width: 5; }
.predicted { fill: none; stroke: #1b5e86; stroke-width: 2; } .spread { fill: #1b5e86; opacity: .18; } .axis { stroke: #666; }
.faint { stroke: #bbb; stroke-dasharray: 3 4; } .belt { fill: none; stroke: #222; stroke-width: 5; } .likely { fill: #1b5e86; }
.blank td, .blank th { border: 1px solid #444; padding: .2em .4em; height: 1.35em; min-width: 4.4em; }
@media print { body { margin: 0; padding: 0; max-width: none; font-size: 10.5px; line-height: 1.3; } h2 { margin: .6em 0 .2em; }
  .caution { margin: .4em 0; padding: .3em .6em; } p { margin: .3em 0; } svg, tr { break-inside: avoid; } }
@page { size: A4; margin: 13mm; }
)";

}  // namespace

std::string html_page(const std::string& title, const std::string& body) {
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + escaped(title) +
           "</title>\n<style>" + style + "</style>\n</head>\n<body>\n" + body + "</body>\n</html>\n";
}

}  // namespace swale
