#include "io/terminal/spread_section.h"

#include "io/terminal/plain_text.h"
#include "io/terminal/text_table.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

std::string percent(double share) {
    return share > 0 && share < 1e-4 ? "< 0.01" : fmt::format("{:.3g}", 100 * share);
}

// The two numbers that the spread comes from most.
std::string origin(const CriterionSpread& one) {
    std::string text;
    for (std::size_t k = 0; k < std::min<std::size_t>(2, one.parts.size()); ++k)
        if (one.parts[k].share > 0.005)
            text += fmt::format("{}{} {:.0f} %", text.empty() ? "" : ", ", one.parts[k].parameter, 100 * one.parts[k].share);
    return text;
}

}  // namespace

std::string spread_headline(const ToleranceSpread& spread, const Tolerances& tolerances) {
    if (!spread.why_none.empty()) return "NO SPREAD: " + spread.why_none;
    const std::string distance = spread.distance ? fmt::format("a distance of {:.0f} mm keeps every limit", *spread.distance)
                                                 : "no distance within the bounds keeps every limit";
    return fmt::format("ANY LIMIT IS EXCEEDED IN {} OF 100 CASES; {} from being exceeded more often than in {} of 100",
                       percent(spread.any_exceeds), distance, percent(tolerances.exceed));
}

std::string spread_tables(const ToleranceSpread& spread) {
    if (!spread.why_none.empty()) return "";
    const bool sampled = spread.sampled_any_exceeds.has_value();
    std::vector<TextRow> rows{{"Criterion, state", "value", "+-", "limit", "unit", "exceeded [%]"}};
    if (sampled) rows.front().insert(rows.front().end(), {"+- sampled", "exceeded [%]"});
    rows.front().push_back("spread comes from");
    for (const CriterionSpread& one : spread.criteria) {
        TextRow row{shortened(one.criterion + ", " + one.state, 44),
                    significant(one.value),
                    significant(one.deviation),
                    significant(one.limit),
                    one.unit,
                    percent(one.exceeds)};
        if (sampled) {
            row.push_back(significant(one.sampled_deviation.value_or(0)));
            row.push_back(percent(one.sampled_exceeds.value_or(0)));
        }
        row.push_back(origin(one));
        rows.push_back(row);
    }
    std::string text = text_table(rows, sampled ? "lrrrlrrrl" : "lrrrlrl") +
                       "+-: one standard deviation, to first order; \"exceeded\" with the estimated error on top\n";
    if (sampled)
        text +=
            fmt::format("{} belts drawn at random and solved: any limit exceeded in {} of 100; {} have no solution\n",
                        spread.samples + spread.samples_without, percent(*spread.sampled_any_exceeds), spread.samples_without);
    return text;
}

}  // namespace swale
