#include "solver/criteria/criteria.h"

#include <algorithm>

namespace swale {

namespace {

const SupportForce* named(const StateResult& state, const std::string& name) {
    const auto found = std::ranges::find(state.supports, name, &SupportForce::name);
    return found == state.supports.end() || !found->touched ? nullptr : &*found;
}

// Width of the belt between what lies on the centre roll and what lies on a wing [mm].
std::optional<double> span(const StateResult& state, const std::string& set) {
    const SupportForce* centre = named(state, set + " centre");
    if (!centre) return {};
    std::optional<double> least;
    const auto take = [&](double width) { least = std::min(least.value_or(width), width); };
    if (const SupportForce* left = named(state, set + " wing +y")) take((*left->touched)[0] - (*centre->touched)[1]);
    if (const SupportForce* right = named(state, set + " wing -y")) take((*centre->touched)[0] - (*right->touched)[1]);
    return least;
}

}  // namespace

// The belt's free span over the gap between centre and wing roll, the least of all sets on whose both rolls it lies. As short
// as the gap it is pressed into it. No limit is published. Told to the distance of the rows of contact points, 2 mm next to the
// junction, 15 mm farther off.
Judgement judge_free_span(const TransitionCase&, const StateResult& state) {
    Judgement judgement{"free span over the gap", state.name, {}, {}, "mm", {}, {}, false, "", {}, {}};
    judgement.at_least = true;
    for (const SupportForce& support : state.supports) {
        const std::size_t end = support.name.find(" centre");
        if (end == std::string::npos) continue;
        const std::string set = support.name.substr(0, end);
        const std::optional<double> width = span(state, set);
        if (!width || *width >= judgement.value.value_or(*width + 1)) continue;
        judgement.value = width;
        judgement.where = set;
    }
    return judgement;
}

}  // namespace swale
