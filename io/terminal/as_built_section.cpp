#include "io/terminal/as_built_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/sizing_section.h"
#include "io/terminal/text_table.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace swale {

namespace {

std::string percent(double share) {
    return std::isfinite(share) ? fmt::format("{:.1f}", 100 * share) : "-";
}

std::string left_of(const Arrangement& one) {
    if (one.headroom < 0) return fmt::format("over by {} %", percent(-one.headroom));
    return fmt::format("{} % left", percent(one.headroom));
}

TextRow row_of(const Arrangement& one, const Arrangement& measured) {
    const TransitionLayout& layout = one.transition.layout;
    return {one.name,
            fmt::format("{:.0f}", layout.distance),
            fmt::format("{:.0f}", layout.pulley.lift),
            one.passes ? "passes" : "fails",
            percent(one.headroom),
            &one == &measured ? "" : fmt::format("{:+.1f}", 100 * (one.headroom - measured.headroom)),
            shortened(one.binding, 44)};
}

}  // namespace

std::string as_built_headline(const AsBuilt& as_built) {
    const Arrangement& measured = as_built.measured;
    if (!std::ranges::all_of(as_built.result.states, converged)) return "AS MEASURED: NOT CONVERGED: " + measured.binding;
    std::string text = fmt::format("AS MEASURED: {}: {}, {} with the estimated error counted; as drawn {}.",
                                   measured.passes ? "WITHIN LIMITS" : "OVER A LIMIT", measured.binding, left_of(measured),
                                   left_of(as_built.drawn));
    if (as_built.changes.empty()) return text;
    const Arrangement& best = as_built.changes.front();
    if (best.headroom <= measured.headroom) return text + " None of the single changes tried leaves more.";
    return text +
           fmt::format(" Of single changes one buys most: {}, {}; nearest then {}.", best.name, left_of(best), best.binding);
}

std::string as_built_tables(const AsBuilt& as_built) {
    std::vector<TextRow> rows{{"", "distance", "lift [mm]", "", "headroom [%]", "gain", "nearest limit"}};
    rows.push_back(row_of(as_built.measured, as_built.measured));
    rows.push_back(row_of(as_built.drawn, as_built.measured));
    for (const Arrangement& change : as_built.changes) rows.push_back(row_of(change, as_built.measured));
    return text_table(rows, "lrrlrrl") + levers_text(as_built.levers);
}

}  // namespace swale
