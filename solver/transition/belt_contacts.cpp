#include "solver/transition/belt_contacts.h"

#include "solver/transition/sag.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

// How far from its line a roll can be touched by the belt [mm].
constexpr double least_reach_along = 45, reach_across = 50;

// The edge's path in straight lines through pulley, stations and first full set is longer than the centre line's, which is
// longer than that of a belt lying off all of them: within these bounds the belt meets a set before or behind `scale` times its
// path.
double reach_along(const TransitionCase& transition, const TensionState& state) {
    const TransitionLayout& layout = transition.layout;
    double edge = 0, first_set = 0;
    Eigen::Vector3d last(0, layout.belt_width / 2, layout.pulley.lift);
    for (const IdlerSet& set : idler_sets(layout, 1)) {
        Eigen::Vector3d next(set.x, 0, set.lift);
        for (const Facet& facet : layout.facets(set.angle, set.inner_angle))
            next += (facet.end - facet.begin) * Eigen::Vector3d(0, std::cos(facet.angle), std::sin(facet.angle));
        edge += (next - last).norm();
        last = next;
        first_set = set.x;
    }
    return std::max(least_reach_along, 15 + edge - first_set + hanging_length(transition, state));
}

ContactWindow clipped(const Patch& patch, ContactWindow window) {
    window.x_begin = std::clamp(window.x_begin, patch.along.begin(), patch.along.end());
    window.x_end = std::clamp(window.x_end, patch.along.begin(), patch.along.end());
    window.y_begin = std::clamp(window.y_begin, patch.across.begin(), patch.across.end());
    window.y_end = std::clamp(window.y_end, patch.across.begin(), patch.across.end());
    return window;
}

// Collects the contacts of a model.
class Contacts {
  public:
    Contacts(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale)
        : layout_(transition.layout),
          section_(transition.belt.section),
          patch_(patch),
          scale_(scale),
          reach_(reach_along(transition, state)),
          half_(patch.across.begin() == 0) {}

    void add_pulley() {
        const double edge = layout_.belt_width / 2;
        const double off = std::min(layout_.distance / 2, 60 + 0.35 * layout_.pulley.diameter / 2);
        add("pulley", "", RollPlace::pulley, 0, pulley_roll(layout_, section_.underside),
            {patch_.along.begin(), off, -edge, edge});
    }

    void add_set(const IdlerSet& set) {
        for (const SetRoll& roll : rolls_of(layout_, set, section_.underside)) {
            if (half_ && roll.side < 0) continue;
            const std::string name = set.name + " " + roll.name;
            const std::string mirror = half_ && roll.side > 0 ? name.substr(0, name.size() - 2) + "-y" : "";
            add(name, mirror, roll.side == 0 ? RollPlace::centre : RollPlace::wing, roll.x, roll.roll, window(set, roll));
        }
    }

    std::vector<BeltContact> take() { return std::move(contacts_); }

  private:
    // A tilted or offset roll reaches beyond the set's plane.
    ContactWindow window(const IdlerSet& set, const SetRoll& roll) const {
        const double middle = roll.roll.centre.x() - set.x, ahead = roll.roll.half_length * std::abs(roll.roll.axis.x());
        const double begin = set.path * scale_ + (middle - ahead), end = set.path * scale_ + (middle + ahead);
        const double from = roll.facet.begin - reach_across, to = roll.facet.end + reach_across;
        if (roll.side == 0) return {begin - reach_, end + reach_, -to, to};
        if (roll.side > 0) return {begin - reach_, end + reach_, from, to};
        return {begin - reach_, end + reach_, -to, -from};
    }

    void add(std::string name, std::string mirror, RollPlace place, double x, const Roll& roll, const ContactWindow& window) {
        const ContactLaw law{section_.foundation};
        contacts_.push_back({std::move(name), std::move(mirror), place, x,
                             std::make_shared<ContactEnergy>(patch_, roll, law, section_.underside, clipped(patch_, window))});
    }

    const TransitionLayout& layout_;
    const Section& section_;
    const Patch& patch_;
    double scale_;
    double reach_;
    bool half_;
    std::vector<BeltContact> contacts_;
};

}  // namespace

std::vector<BeltContact> belt_contacts(const TransitionCase& transition, const TensionState& state, const Patch& patch,
                                       double scale, int sets) {
    Contacts contacts(transition, state, patch, scale);
    if (transition.layout.pulley.support == Support::rolls) contacts.add_pulley();
    for (const IdlerSet& set : idler_sets(transition.layout, sets))
        if (set.support == Support::rolls) contacts.add_set(set);
    return contacts.take();
}

std::vector<BeltContact> set_contacts(const TransitionCase& transition, const TensionState& state, const Patch& patch,
                                      double scale, const IdlerSet& set) {
    Contacts contacts(transition, state, patch, scale);
    contacts.add_set(set);
    return contacts.take();
}

}  // namespace swale
