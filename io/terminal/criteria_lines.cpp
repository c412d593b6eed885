#include "io/terminal/criteria_lines.h"

#include "io/terminal/headline.h"
#include "io/terminal/plain_text.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <algorithm>

namespace swale {

namespace {

std::string limit_of(const Judgement& judgement) {
    return significant(*judgement.limit * print_scale(judgement).factor);
}

std::string why_not_judged(const Judgement& judgement) {
    if (judgement.limit) return "the limit is advisory, it only warns (" + judgement.source + ")";
    if (!judgement.source.empty()) return judgement.source;
    return judgement.value ? "no limit given" : "not defined here";
}

}  // namespace

std::vector<std::string> criterion_names(const std::vector<Judgement>& criteria) {
    std::vector<std::string> names;
    for (const Judgement& judgement : criteria)
        if (std::find(names.begin(), names.end(), judgement.name) == names.end()) names.push_back(judgement.name);
    return names;
}

const Judgement* find_judgement(const std::vector<Judgement>& criteria, const std::string& name, const std::string& state) {
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

bool limits_differ(const std::vector<Judgement>& criteria, const std::string& name) {
    const std::optional<double>& first = first_with_limit(criteria, name).limit;
    return std::any_of(criteria.begin(), criteria.end(),
                       [&](const Judgement& entry) { return entry.name == name && entry.limit != first; });
}

std::string limit_text(const std::vector<Judgement>& criteria, const std::string& name) {
    const Judgement& judgement = first_with_limit(criteria, name);
    if (!judgement.limit) return "none";
    const std::string sign = judgement.at_least ? ">= " : "<= ";
    if (limits_differ(criteria, name)) return sign + "its own";
    return sign + limit_of(judgement) + (judgement.advisory ? " adv." : "");
}

std::string value_text(const Judgement* judgement, bool with_limit) {
    if (judgement == nullptr || !judgement->value) return "-";
    std::string text = significant(*judgement->value * print_scale(*judgement).factor);
    if (with_limit && judgement->limit) text += " of " + limit_of(*judgement);
    if (judgement->utilisation) text += fmt::format(" ({:.0f}%)", *judgement->utilisation * 100);
    text += over_a_limit(*judgement) ? " !" : over_an_advisory_limit(*judgement) ? " ?" : "";
    return text + (undecided(*judgement) ? " ~" : "");
}

std::vector<std::pair<std::string, std::string>> not_judged(const TransitionResult& result) {
    std::vector<std::pair<std::string, std::string>> names_by_reason;  // in the order of the criteria
    for (const std::string& name : criterion_names(result.criteria)) {
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
    return names_by_reason;
}

}  // namespace swale
