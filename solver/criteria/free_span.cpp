#include "solver/criteria/criteria.h"

#include <algorithm>

namespace swale {

namespace {

// From right to left.
constexpr const char* rolls[] = {"wing -y", "inner wing -y", "centre", "inner wing +y", "wing +y"};

const SupportForce* named(const StateResult& state, const std::string& name) {
    const auto found = std::ranges::find(state.supports, name, &SupportForce::name);
    return found == state.supports.end() ? nullptr : &*found;
}

// Least width of the belt between what lies on one roll of the set and what lies on the next [mm].
std::optional<double> span(const StateResult& state, const std::string& set) {
    std::optional<double> least;
    const SupportForce* last = nullptr;
    for (const char* roll : rolls) {
        const SupportForce* next = named(state, set + " " + roll);
        if (!next) continue;
        if (last && last->touched && next->touched) {
            const double width = (*next->touched)[0] - (*last->touched)[1];
            least = std::min(least.value_or(width), width);
        }
        last = next;
    }
    return least;
}

// "station 1 inner wing +y" -> "station 1"
std::string set_of(const std::string& roll) {
    return roll.substr(0, roll.find(' ', roll.find(' ') + 1));
}

}  // namespace

// The belt's free span over the gap between two rolls of a set, the least of all on which it lies. As short
// as the gap it is pressed into it. No limit is published. Told to the distance of the rows of contact points, 2 mm next to the
// junction, 15 mm farther off.
Judgement judge_free_span(const TransitionCase&, const StateResult& state) {
    Judgement judgement{"free span over the gap", state.name, {}, {}, "mm", {}, {}, false, "", {}, {}};
    judgement.at_least = true;
    for (const SupportForce& support : state.supports) {
        if (!support.touched || support.name == "pulley") continue;
        const std::string set = set_of(support.name);
        const std::optional<double> width = span(state, set);
        if (!width || *width >= judgement.value.value_or(*width + 1)) continue;
        judgement.value = width;
        judgement.where = set;
    }
    return judgement;
}

}  // namespace swale
