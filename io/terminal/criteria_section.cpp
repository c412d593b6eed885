#include "io/terminal/criteria_section.h"

#include "io/terminal/criteria_lines.h"
#include "io/terminal/headline.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/state_table.h"
#include "io/verdict.h"

#include <algorithm>

namespace swale {

namespace {

std::string load_cell(const StateResult& state) {
    return state.bulk ? significant(state.bulk->mass_per_length * 1e6) : "-";
}

StateLine criterion_line(const std::vector<Judgement>& criteria, const std::string& name) {
    const std::string unit = print_scale(first_with_limit(criteria, name)).unit;
    const std::string title = shortened(printable(name), 34) + (unit.empty() ? "" : " [" + unit + "]");
    const bool with_limit = limits_differ(criteria, name);
    return {{title, limit_text(criteria, name)}, [&criteria, name, with_limit](const StateResult& state) {
                return value_text(find_judgement(criteria, name, state.name), with_limit);
            }};
}

std::string legend(const std::vector<Judgement>& criteria) {
    std::string text = "  (share of the limit used)";
    if (std::any_of(criteria.begin(), criteria.end(), over_a_limit)) text += "   ! over its limit";
    if (std::any_of(criteria.begin(), criteria.end(), over_an_advisory_limit)) text += "   ? over an advisory limit";
    if (std::any_of(criteria.begin(), criteria.end(), undecided)) text += "   ~ nearer to its limit than the estimated error";
    return text + "\n";
}

}  // namespace

std::string criteria_section(const TransitionResult& result) {
    std::vector<StateLine> lines = {
        {{"belt tension, total [kN]", ""}, [](const StateResult& state) { return significant(state.tension / 1e3); }},
        {{"mean strain at the far end [%]", ""}, [](const StateResult& state) { return significant(state.far_strain * 100); }}};
    if (std::ranges::any_of(result.states, [](const StateResult& state) { return state.bulk.has_value(); }))
        lines.push_back({{"load [kg/m]", ""}, load_cell});
    for (const std::string& name : criterion_names(result.criteria)) lines.push_back(criterion_line(result.criteria, name));
    return state_table({"", "limit"}, lines, result.states) + legend(result.criteria);
}

std::string not_judged_section(const TransitionResult& result) {
    std::string text;
    for (const auto& [names, reason] : not_judged(result)) text += "  - " + wrapped(names + ": " + reason, 4);
    return text.empty() ? text : "Reported, not judged\n" + text;
}

}  // namespace swale
