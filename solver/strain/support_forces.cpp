#include "solver/strain/support_forces.h"

#include <algorithm>
#include <utility>

namespace swale {

namespace {

using Eigen::Vector3d;

// The whole belt's share of a force on the modelled half: both sides, whose y components cancel.
Vector3d both_halves(const Vector3d& force, bool half) {
    return half ? Vector3d(2 * force.x(), 0, 2 * force.z()) : force;
}

// What the supports of the first rows push with: the residual of fixed components is the reaction.
Vector3d pulley_reaction(const BeltModel& model, const ControlPoints& gradient, bool clamped) {
    Vector3d sum = Vector3d::Zero();
    for (int j = 0; j < model.patch.across.size(); ++j) {
        sum += gradient.col(model.patch.index(0, j));
        if (clamped) sum.z() += gradient(2, model.patch.index(1, j));
    }
    return both_halves(sum, model.half);
}

// A held inner section fixes w0 c0 + w1 c1 + w2 c2; the force on that sum is the middle row's residual over w1.
Vector3d station_reaction(const BeltModel& model, const ControlPoints& gradient, const IdlerSet& set) {
    const BasisValues at_set = model.patch.along.at(set.path * model.scale);
    Vector3d sum = Vector3d::Zero();
    for (int j = 0; j < model.patch.across.size(); ++j)
        sum += gradient.col(model.patch.index(at_set.first + 1, j)) / at_set.value[1];
    sum.x() = 0;
    return both_halves(sum, model.half);
}

Vector3d trough_reaction(const BeltModel& model, const ControlPoints& gradient) {
    Vector3d sum = Vector3d::Zero();
    for (int j = 0; j < model.patch.across.size(); ++j) sum += gradient.col(model.patch.index(model.patch.along.size() - 1, j));
    return both_halves(sum, model.half);
}

using Stretch = std::array<double, 2>;

// From the first to the last row of contact points that bears more than a thousandth of the most loaded one.
std::optional<Stretch> touched_rows(const ContactEnergy& energy, const ControlPoints& points) {
    const auto rows = energy.line_force(points);
    double most = 0;
    for (const auto& [y, force] : rows) most = std::max(most, force);
    std::optional<Stretch> touched;
    for (const auto& [y, force] : rows) {
        if (force <= 1e-3 * most) continue;
        if (!touched) touched = Stretch{y, y};
        (*touched)[1] = y;
    }
    return touched;
}

std::optional<Stretch> mirrored(const std::optional<Stretch>& touched) {
    return touched ? std::optional(Stretch{-(*touched)[1], -(*touched)[0]}) : std::nullopt;
}

std::vector<SupportForce> contact_forces(const BeltContact& contact, const BeltModel& model, const ControlPoints& points) {
    const Vector3d force = roll_force(contact, model.half, points);
    const double gap = contact.energy->smallest_gap(points);
    const double lift_off = gap > 0.02 ? gap : 0;  // closer than the law's corner is touching
    std::optional<Stretch> touched = touched_rows(*contact.energy, points);
    if (touched && model.half && contact.mirror.empty()) touched = Stretch{-(*touched)[1], (*touched)[1]};
    std::vector<SupportForce> forces{{contact.name, contact.x, force, lift_off, touched}};
    if (!contact.mirror.empty())
        forces.push_back({contact.mirror, contact.x, Vector3d(force.x(), -force.y(), force.z()), lift_off, mirrored(touched)});
    return forces;
}

}  // namespace

Vector3d roll_force(const BeltContact& contact, bool half, const ControlPoints& points) {
    const Vector3d force = contact.energy->force(points);
    return contact.mirror.empty() ? both_halves(force, half) : force;
}

std::vector<SupportForce> support_forces(const TransitionCase& transition, const BeltModel& model,
                                         const ControlPoints& points) {
    const ControlPoints gradient = model.system.full_gradient(points);
    const bool clamped = transition.layout.pulley.support == Support::rolls;
    std::vector<SupportForce> forces{{"pulley", 0, pulley_reaction(model, gradient, clamped), {}}};
    for (const IdlerSet& set : model.idlers) {
        if (set.support == Support::rolls) continue;
        const bool last = transition.layout.trough.support == Support::held && set.x >= transition.layout.distance - 1e-9;
        forces.push_back(
            {set.name, set.x, last ? trough_reaction(model, gradient) : station_reaction(model, gradient, set), {}});
    }
    for (const BeltContact& contact : model.contacts)
        for (SupportForce& force : contact_forces(contact, model, points)) {
            if (contact.place == RollPlace::pulley) {
                forces.front().force += force.force;
                forces.front().lift_off = force.lift_off;
                forces.front().touched = force.touched;
            } else {
                forces.push_back(std::move(force));
            }
        }
    std::stable_sort(forces.begin(), forces.end(), [](const SupportForce& a, const SupportForce& b) { return a.x < b.x; });
    return forces;
}

double far_tension(const TensionState& state, const BeltModel& model, const ControlPoints& points) {
    return state.total ? *state.total : trough_reaction(model, model.system.full_gradient(points)).x();
}

double pulley_tension(const BeltModel& model, const ControlPoints& points, double far) {
    double along = 0;
    for (const BeltContact& contact : model.contacts) along += contact.energy->force(points, 0).x();
    return far + model.multiplicity() * along;
}

Vector3d far_end_force(const TensionState& state, const BeltModel& model, const ControlPoints& points) {
    if (!model.beyond) return {state.total.value_or(0), 0, 0};
    ControlPoints gradient = ControlPoints::Zero(3, model.patch.points());
    TroughBeyond(model.beyond->bay, model.beyond->joint, model.patch, model.end).add_gradient(points, gradient);
    return both_halves(-gradient.rowwise().sum(), model.half);
}

}  // namespace swale
