#include "solver/transition/belt_model.h"

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
double reach_along(const TransitionLayout& layout) {
    const double wing = layout.belt_width / 2 - layout.junction();
    double edge = 0, first_set = 0;
    Eigen::Vector3d last(0, layout.belt_width / 2, layout.pulley.lift);
    for (const IdlerSet& set : idler_sets(layout, 1)) {
        const Eigen::Vector3d next(set.x, layout.junction() + wing * std::cos(set.angle),
                                   set.lift + wing * std::sin(set.angle));
        edge += (next - last).norm();
        last = next;
        first_set = set.x;
    }
    return std::max(least_reach_along, 15 + edge - first_set);
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
    Contacts(const TransitionLayout& layout, const Section& section, const Patch& patch, double scale, bool half)
        : layout_(layout), section_(section), patch_(patch), scale_(scale), reach_(reach_along(layout)), half_(half) {}

    void add_pulley() {
        const double edge = layout_.belt_width / 2;
        const double off = std::min(layout_.distance / 2, 60 + 0.35 * layout_.pulley.diameter / 2);
        add("pulley", "", RollPlace::pulley, 0, pulley_roll(layout_, section_.underside),
            {patch_.along.begin(), off, -edge, edge});
    }

    void add_set(const IdlerSet& set) {
        const SetRolls rolls = rolls_of(layout_, set, section_.underside);
        const double x = set.path * scale_, edge = layout_.belt_width / 2, inner = layout_.junction() - reach_across;
        const double width = layout_.junction() + reach_across;
        const ContactWindow centre{x - reach_, x + reach_, -width, width};
        const ContactWindow left{x - reach_, x + reach_, inner, edge};
        add(set.name + " centre", "", RollPlace::centre, set.x, rolls.centre, centre);
        add(set.name + " wing +y", half_ ? set.name + " wing -y" : "", RollPlace::wing, set.x, rolls.wing_left, left);
        if (half_) return;
        add(set.name + " wing -y", "", RollPlace::wing, set.x, rolls.wing_right, {left.x_begin, left.x_end, -edge, -inner});
    }

    std::vector<BeltContact> take() { return std::move(contacts_); }

  private:
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

std::vector<BeltContact> belt_contacts(const TransitionCase& transition, const Patch& patch, double scale, int sets,
                                       bool half) {
    Contacts contacts(transition.layout, transition.belt.section, patch, scale, half);
    if (transition.layout.pulley.support == Support::rolls) contacts.add_pulley();
    for (const IdlerSet& set : idler_sets(transition.layout, sets))
        if (set.support == Support::rolls) contacts.add_set(set);
    return contacts.take();
}

// A total tension pulls at the far plane; half of it at half a belt.
std::shared_ptr<const DeadLoad> end_pull(const Patch& patch, double tension) {
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    forces(0, patch.index(patch.along.size() - 1, 0)) = tension;
    return std::make_shared<DeadLoad>(std::move(forces));
}

System system_of(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale, bool half,
                 Parity parity) {
    const SupportRequest request{transition.belt.section.underside, scale, half, parity, state.elongation};
    return System(patch, belt_supports(transition.layout, patch, request));
}

void add_terms(System& system, const BeltModel& model, const TensionState& state) {
    system.add(model.shell);
    system.add(model.weight, TermKind::load);
    for (const BeltContact& contact : model.contacts) system.add(contact.energy, TermKind::contact);
    if (state.total) system.add(end_pull(model.patch, *state.total / model.multiplicity()), TermKind::load);
}

}  // namespace

BeltModel belt_model(const TransitionCase& transition, const TensionState& state, int sets, const Patch& patch, double scale,
                     int gauss_points) {
    const bool half = patch.across.begin() == 0;
    const Section& section = transition.belt.section;
    const Eigen::Vector3d weight(0, 0, -section.mass * gravity);
    BeltModel model{patch,
                    scale,
                    half,
                    std::make_shared<ShellEnergy>(patch, section, NaturalCurvature{}, gauss_points),
                    std::make_shared<DeadLoad>(area_load(patch, weight)),
                    belt_contacts(transition, patch, scale, sets, half),
                    idler_sets(transition.layout, sets),
                    system_of(transition, state, patch, scale, half, Parity::symmetric)};
    add_terms(model.system, model, state);
    return model;
}

System system_with(const TransitionCase& transition, const TensionState& state, const BeltModel& model, Parity parity) {
    System system = system_of(transition, state, model.patch, model.scale, model.half, parity);
    add_terms(system, model, state);
    return system;
}

double material_place(const BeltModel& model, const ControlPoints& points, double x) {
    const CubicBasis& along = model.patch.along;
    double place = std::clamp(x * model.scale, along.begin(), along.end());
    for (int round = 0; round < 20; ++round) {
        const SurfaceJet jet = model.patch.jet(points, place, 0);
        const double next =
            std::clamp(place + (x - jet.position.x()) / std::max(0.2, jet.along.x()), along.begin(), along.end());
        if (std::abs(next - place) < 1e-6) return next;
        place = next;
    }
    return place;
}

std::vector<NamedRoll> all_rolls(const TransitionLayout& layout, int sets, double underside) {
    std::vector<NamedRoll> rolls;
    if (layout.pulley.support == Support::rolls) rolls.push_back({"pulley", pulley_roll(layout, underside)});
    for (const IdlerSet& set : idler_sets(layout, sets)) {
        if (set.support == Support::held) continue;
        const SetRolls of_set = rolls_of(layout, set, underside);
        rolls.push_back({set.name + " centre", of_set.centre});
        rolls.push_back({set.name + " wing +y", of_set.wing_left});
        rolls.push_back({set.name + " wing -y", of_set.wing_right});
    }
    return rolls;
}

}  // namespace swale
