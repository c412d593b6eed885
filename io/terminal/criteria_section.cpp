#include "io/terminal/criteria_section.h"

#include "io/terminal/headline.h"
#include "io/terminal/plain_text.h"
#include "io/terminal/state_table.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace swale {

namespace {

/// Names of the criteria, each once, in their order.
std::vector<std::string> names_of(const std::vector<Judgement>& criteria) {
    std::vector<std::string> names;
    for (const Judgement& judgement : criteria)
        if (std::find(names.begin(), names.end(), judgement.name) == names.end()) names.push_back(judgement.name);
    return names;
}

const Judgement* find(const std::vector<Judgement>& criteria, const std::string& name, const std::string& state) {
    for (const Judgement& judgement : criteria)
        if (judgement.name == name && judgement.state == state) return &judgement;
    return nullptr;
}

const Judgement& first_with_limit(const std::vector<Judgement>& criteria, const std::string& name) {
    const Judgement* found = nullptr;
    for (const Judgement& judgement : criteria)
        if (judgement.name == name && (found == nullptr || (!found->limit && judgement.limit))) found = &judgement;
    return *found;
}

/// States may have limits of their own.
bool limits_differ(const std::vector<Judgement>& criteria, const std::string& name) {
    const std::optional<double>& first = first_with_limit(criteria, name).limit;
    return std::any_of(criteria.begin(), criteria.end(),
                       [&](const Judgement& entry) { return entry.name == name && entry.limit != first; });
}

std::string limit_of(const Judgement& judgement) {
    return significant(*judgement.limit * print_scale(judgement).factor);
}

std::string limit_cell(const std::vector<Judgement>& criteria, const std::string& name) {
    const Judgement& judgement = first_with_limit(criteria, name);
    if (!judgement.limit) return "none";
    const std::string sign = judgement.at_least ? ">= " : "<= ";
    if (limits_differ(criteria, name)) return sign + "its own";
    return sign + limit_of(judgement) + (judgement.advisory ? " adv." : "");
}

std::string value_cell(const Judgement* judgement, bool with_limit) {
    if (judgement == nullptr || !judgement->value) return "-";
    std::string text = significant(*judgement->value * print_scale(*judgement).factor);
    if (with_limit && judgement->limit) text += " of " + limit_of(*judgement);
    if (judgement->utilisation) text += fmt::format(" ({:.0f}%)", *judgement->utilisation * 100);
    return text + (over_a_limit(*judgement) ? " !" : over_an_advisory_limit(*judgement) ? " ?" : "");
}

std::string load_cell(const StateResult& state) {
    return state.bulk ? significant(state.bulk->mass_per_length * 1e6) : "-";
}

StateLine criterion_line(const std::vector<Judgement>& criteria, const std::string& name) {
    const std::string unit = print_scale(first_with_limit(criteria, name)).unit;
    const std::string title = shortened(printable(name), 34) + (unit.empty() ? "" : " [" + unit + "]");
    const bool with_limit = limits_differ(criteria, name);
    return {{title, limit_cell(criteria, name)}, [&criteria, name, with_limit](const StateResult& state) {
                return value_cell(find(criteria, name, state.name), with_limit);
            }};
}

std::string legend(const std::vector<Judgement>& criteria) {
    std::string text = "  (share of the limit used)";
    if (std::any_of(criteria.begin(), criteria.end(), over_a_limit)) text += "   ! over its limit";
    if (std::any_of(criteria.begin(), criteria.end(), over_an_advisory_limit)) text += "   ? over an advisory limit";
    return text + "\n";
}

std::string why_not_judged(const Judgement& judgement) {
    if (judgement.limit) return "the limit is advisory, it only warns (" + judgement.source + ")";
    if (!judgement.source.empty()) return judgement.source;
    return judgement.value ? "no limit given" : "not defined here";
}

}  // namespace

std::string criteria_section(const TransitionResult& result) {
    std::vector<StateLine> lines = {
        {{"belt tension, total [kN]", ""}, [](const StateResult& state) { return significant(state.tension / 1e3); }},
        {{"mean strain at the far end [%]", ""}, [](const StateResult& state) { return significant(state.far_strain * 100); }}};
    if (std::ranges::any_of(result.states, [](const StateResult& state) { return state.bulk.has_value(); }))
        lines.push_back({{"load [kg/m]", ""}, load_cell});
    for (const std::string& name : names_of(result.criteria)) lines.push_back(criterion_line(result.criteria, name));
    return state_table({"", "limit"}, lines, result.states) + legend(result.criteria);
}

std::string not_judged_section(const TransitionResult& result) {
    std::vector<std::pair<std::string, std::string>> names_by_reason;  // in the order of the criteria
    for (const std::string& name : names_of(result.criteria)) {
        const auto judged = [&](const Judgement& entry) { return entry.name == name && entry.passed; };
        if (std::any_of(result.criteria.begin(), result.criteria.end(), judged)) continue;
        const std::string reason = why_not_judged(first_with_limit(result.criteria, name));
        const auto same = std::find_if(names_by_reason.begin(), names_by_reason.end(),
                                       [&](const auto& entry) { return entry.second == reason; });
        if (same == names_by_reason.end())
            names_by_reason.emplace_back(name, reason);
        else
            same->first += ", " + name;
    }
    std::string text;
    for (const auto& [names, reason] : names_by_reason) text += "  - " + wrapped(names + ": " + reason, 4);
    return text.empty() ? text : "Reported, not judged\n" + text;
}

}  // namespace swale
