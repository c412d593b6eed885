#include "io/terminal/headline.h"

#include "io/terminal/plain_text.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <limits>
#include <set>

namespace swale {

namespace {

std::string in_print(const Judgement& judgement, const std::optional<double>& value) {
    const PrintScale scale = print_scale(judgement);
    const std::string number = value ? significant(*value * scale.factor) : "-";
    return scale.unit.empty() ? number : number + " " + scale.unit;
}

std::string sentence(const Judgement& judgement) {
    std::string text =
        fmt::format("{} in \"{}\" is {}{}, limit {}", judgement.name, judgement.state, in_print(judgement, judgement.value),
                    judgement.where.empty() ? "" : " at " + judgement.where, in_print(judgement, judgement.limit));
    if (judgement.utilisation) text += fmt::format(" ({:.0f} % used)", *judgement.utilisation * 100);
    return text;
}

/// The judged criterion nearest to its limit, or farthest over it, among those that `counts` lets pass; null if there is none.
template <class Predicate>
const Judgement* worst(const TransitionResult& result, Predicate counts) {
    const Judgement* found = nullptr;
    const auto used = [](const Judgement& entry) {
        return entry.utilisation.value_or(-std::numeric_limits<double>::infinity());
    };
    for (const Judgement& judgement : result.criteria)
        if (counts(judgement) && (found == nullptr || used(judgement) > used(*found))) found = &judgement;
    return found;
}

template <class Predicate>
long count(const TransitionResult& result, Predicate counts) {
    long number = 0;
    for (const Judgement& judgement : result.criteria) number += counts(judgement) ? 1 : 0;
    return number;
}

bool judged(const Judgement& judgement) {
    return judgement.passed.has_value() && !judgement.advisory;
}

/// What the limits say of the states that have a solution.
std::string judgement_sentence(const TransitionResult& result) {
    if (const Judgement* over = worst(result, over_a_limit)) {
        const long others = count(result, over_a_limit) - 1;
        return sentence(*over) + (others > 0 ? fmt::format("; {} more over their limits.", others) : ".");
    }
    if (const Judgement* nearest = worst(result, judged))
        return "every limit holds in every state solved; nearest to one: " + sentence(*nearest) + ".";
    return "nothing was judged, since no criterion has a limit.";
}

std::string warning_sentence(const TransitionResult& result) {
    const Judgement* over = worst(result, over_an_advisory_limit);
    if (over == nullptr) return {};
    const long others = count(result, over_an_advisory_limit) - 1;
    return " Warning: " + sentence(*over) + ", advisory" + (others > 0 ? fmt::format("; {} more.", others) : ".");
}

// The verdict stands by the value; that it may turn on a finer grid is said.
std::string undecided_sentence(const TransitionResult& result) {
    const Judgement* nearest = worst(result, undecided);
    if (nearest == nullptr) return {};
    const long others = count(result, undecided) - 1;
    return fmt::format(" Nearer to its limit than the estimated error of {}: {}{}.", in_print(*nearest, nearest->error),
                       sentence(*nearest), others > 0 ? fmt::format("; {} more", others) : "");
}

// What several states say is counted once.
std::size_t warnings_of_states(const TransitionResult& result) {
    std::set<std::string> warnings;
    for (const StateResult& state : result.states)
        for (const std::string& note : state.notes)
            if (note.starts_with("warning: ")) warnings.insert(note);
    return warnings.size();
}

std::string notes_sentence(const TransitionResult& result, std::size_t of_belt) {
    const std::size_t of_states = warnings_of_states(result);
    std::string text;
    if (of_belt > 0) text = fmt::format("{} of the belt's data", of_belt);
    if (of_states > 0) text += fmt::format("{}{} of the states", text.empty() ? "" : ", ", of_states);
    return text.empty() ? text : " Warnings under the notes: " + text + ".";
}

std::string unsolved_sentence(const TransitionResult& result) {
    std::string names;
    size_t number = 0;
    for (const StateResult& state : result.states)
        if (!converged(state)) names += (number++ == 0 ? "\"" : ", \"") + state.name + "\"";
    std::string text = fmt::format("no solution for {} ({} of {} states)", names, number, result.states.size());
    return number == result.states.size() ? text + "." : text + "; of the others: ";
}

}  // namespace

PrintScale print_scale(const Judgement& judgement) {
    if (judgement.unit == "1") return {100, "%"};
    if (judgement.unit == "N") return {1e-3, "kN"};
    if (judgement.unit == "N/mm^3") return {1e6, "kN/m^3"};
    return {1, judgement.unit};
}

std::string headline(const TransitionResult& result, const std::vector<std::string>& belt_warnings) {
    const int code = exit_code(result);
    std::string text = code == 3   ? "NOT CONVERGED: " + unsolved_sentence(result)
                       : code == 1 ? "OVER A LIMIT: "
                                   : "WITHIN LIMITS: ";
    if (text.back() != '.') text += judgement_sentence(result) + warning_sentence(result) + undecided_sentence(result);
    return text + notes_sentence(result, belt_warnings.size());
}

}  // namespace swale
