#include "io/wear/field_sheet.h"

#include "io/wear/page_text.h"

#include <fmt/format.h>

#include <vector>

namespace swale {

namespace {

constexpr const char* before = R"(<h1>Return rolls: wear survey</h1>
<div class="caution"><b>Before anyone goes near.</b> Nothing here is read on a belt that can move.
<ul>
<li>Stop the conveyor, isolate <b>every</b> drive, lock and tag out, try to start it. Each person has a lock of their own.</li>
<li><b>A belt at rest is under tension.</b> A take-up weight, winch, loaded incline or backstop holds it. Have those
licensed to do so secure the take-up and fit belt clamps rated for it where the belt could run back, or release the tension.</li>
<li>Nip points: roll and belt, pulley and belt, take-up. Hands, sleeves and tools stay out of them. Never reach to a roll that
turns, and never turn a roll by the belt.</li>
<li>Guards come off after lock-out only and go back before the locks do. Mind height, falling material, heat, dust, confined space.</li>
<li>Local codes, the site's permit and a licensed practitioner's judgement go before this sheet. If in doubt, don't.</li>
</ul></div>
)";

constexpr const char* how = R"(<h2>How</h2>
<p>Stand so that you look along the way the <b>return belt moves</b>. Left is +, right is -, 0 is the middle of the roll's face.
Choose three rolls or more, far from pulleys. Per roll either measure the depth of wear or lost paint every 50 to 100 mm from one end to
the other, closest at the belt's edges and where wing and centre rolls meet, or mark stretches as <b>contact</b> (worn or bright),
<b>none</b> (paint, rust or dirt untouched) or <b>unsure</b>. Write down the unworn ends too. Look for light between belt and roll.</p>
)";

std::string blank_table(const std::string& head, int rows, int columns) {
    std::string text = "<table class=\"blank\"><tr>" + head + "</tr>\n";
    for (int r = 0; r < rows; ++r) {
        text += "<tr>";
        for (int c = 0; c < columns; ++c) text += "<td></td>";
        text += "</tr>\n";
    }
    return text + "</table>\n";
}

std::string heads(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += "<th>" + name + "</th>";
    return text;
}

std::string ruler() {
    std::string text =
        "<div class=\"wide\" tabindex=\"0\"><svg viewBox=\"0 0 1000 92\"><rect class=\"shaft\" x=\"30\" y=\"26\" width=\"940\" "
        "height=\"14\"/>"
        "<rect class=\"unworn\" x=\"80\" y=\"8\" width=\"840\" height=\"50\" stroke=\"#444\"/>\n";
    for (int k = -10; k <= 10; ++k)
        text += fmt::format("<line class=\"{}\" x1=\"{}\" y1=\"8\" x2=\"{}\" y2=\"{}\"/>\n", k % 5 == 0 ? "axis" : "faint",
                            500 - 40 * k, 500 - 40 * k, k % 5 == 0 ? 66 : 58);
    return text +
           "<text x=\"80\" y=\"82\">left end: + ______ mm</text><text x=\"500\" y=\"82\" text-anchor=\"middle\">0: middle of "
           "the "
           "face</text><text x=\"920\" y=\"82\" text-anchor=\"end\">right end: - ______ mm</text></svg></div>\n";
}

}  // namespace

std::string field_sheet() {
    std::string body = before;
    body += how;
    body += "<h2>Conveyor</h2>\n" +
            blank_table(heads({"conveyor, date, name", "belt and width", "trough angle, centre roll", "return tension",
                               "return spacing", "roll length, diameter", "side on the roll: carrying / pulley"}),
                        1, 7);
    body +=
        "<h2>Locks</h2>\n" +
        blank_table(heads({"drives isolated", "locked, tagged, tried", "take-up secured", "belt clamped", "permit no."}), 1, 5);
    body += "<h2>Roll seen from above (shade what is worn)</h2>\n" + ruler() + ruler();
    body += "<h2>Readings</h2>\n" + blank_table(heads({"roll", "at, or from - to [mm]", "depth [mm] or mark", "roll",
                                                       "at, or from - to [mm]", "depth [mm] or mark"}),
                                                11, 6);
    body +=
        "<p class=\"small\">Typed as lines <i>roll,at [mm],depth [mm]</i> or <i>roll,from [mm],to [mm],mark</i>, this is what "
        "<i>swale wear</i> reads. Before you leave: tools counted, guards back, locks off by those who put them on.</p>\n";
    return html_page("Return rolls: wear survey", "sheet", body);
}

}  // namespace swale
