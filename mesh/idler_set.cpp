#include "mesh/idler_set.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

void add_paths(const TransitionLayout& layout, std::vector<IdlerSet>& sets) {
    double path = 0, x = 0, height = layout.pulley.lift;
    for (IdlerSet& set : sets) {
        path += std::hypot(set.x - x, set.lift - height);
        x = set.x;
        height = set.lift;
        set.path = layout.trough.support == Support::held ? x : path;
    }
}

void put_measured(const std::shared_ptr<const MeasuredSet>& measured, IdlerSet& set) {
    if (!measured) return;
    set.x += measured->ahead;
    set.angle = measured->angle;
    set.lift = measured->height;
    set.measured = measured;
}

}  // namespace

std::vector<IdlerSet> idler_sets(const TransitionLayout& layout, int sets) {
    const Trough& trough = layout.trough;
    const double tilt = layout.running_direction() * trough.wing_tilt;
    std::vector<IdlerSet> all;
    int number = 0;
    for (const Station& station : layout.stations)
        all.push_back({"station " + std::to_string(++number), station.at, station.angle, layout.lift_of(station),
                       station.support, 0, layout.inner_angle_of(station), tilt, trough.centre_offset, station.measured});
    for (int k = 0; k < sets; ++k) {
        IdlerSet set{"set " + std::to_string(k + 1),
                     layout.distance + k * trough.spacing,
                     trough.angle,
                     0,
                     trough.support,
                     0,
                     trough.inner_angle,
                     tilt,
                     trough.centre_offset};
        if (k < std::ssize(layout.measured)) put_measured(layout.measured[k], set);
        all.push_back(std::move(set));
    }
    add_paths(layout, all);
    return all;
}

namespace {

// Rolls of one set, one after the other outwards.
class SetBuilder {
  public:
    SetBuilder(const TransitionLayout& layout, const IdlerSet& set, double underside)
        : layout_(layout), trough_(layout.trough), set_(set), height_(set.lift - underside) {}

    Roll centre() const {
        const Eigen::Vector3d middle(set_.x + set_.offset, 0, height_ - radius());
        return {middle,   Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(),
                radius(), trough_.centre_roll / 2,  trough_.roll_end_radius};
    }

    // Its contact line, produced, begins at `meeting`, which moves on to the next roll's.
    Roll wing(int side, double angle, double length, Eigen::Vector3d& meeting) const {
        const Eigen::Vector3d across(0, side * std::cos(angle), std::sin(angle));
        const Eigen::Vector3d up(0, -side * std::sin(angle), std::cos(angle));
        const Eigen::Vector3d outward = std::cos(set_.tilt) * across + Eigen::Vector3d(std::sin(set_.tilt), 0, 0);
        const Eigen::Vector3d middle = meeting + (trough_.roll_gap + length) / 2 * outward - radius() * up;
        meeting += (trough_.roll_gap + length) * outward;
        return {middle, outward, up, radius(), length / 2, trough_.roll_end_radius};
    }

    Eigen::Vector3d first_meeting(int side) const { return {set_.x, side * layout_.junction(), height_}; }

    // Roll k of a measured set.
    Roll measured(std::size_t k, int side, double length) const {
        MeasuredRoll roll = set_.measured->rolls[k];
        if (side != 0) turn(side, roll);
        const auto [axis, up] = directions_of(roll);
        const Eigen::Vector3d middle = Eigen::Vector3d(set_.x, 0, height_) + (roll.right + roll.left) / 2 - radius() * up;
        const Eigen::Vector3d outward = side < 0 ? Eigen::Vector3d(-axis) : axis;
        return {middle, outward, up, radius(), length / 2, trough_.roll_end_radius};
    }

  private:
    double radius() const { return trough_.roll_diameter / 2; }

    // A station's angle may have been changed since it was measured.
    void turn(int side, MeasuredRoll& roll) const {
        const double by = side * (set_.angle - set_.measured->angle);
        if (by == 0) return;
        const std::vector<MeasuredRoll>& rolls = set_.measured->rolls;
        const MeasuredRoll& innermost = rolls[rolls.size() % 2 + (side > 0 ? 0 : 1)];
        const Eigen::Vector3d pivot = side > 0 ? innermost.right : innermost.left;
        const Eigen::AngleAxisd turn(by, Eigen::Vector3d::UnitX());
        roll = {pivot + turn * (roll.right - pivot), pivot + turn * (roll.left - pivot)};
    }

    const TransitionLayout& layout_;
    const Trough& trough_;
    const IdlerSet& set_;
    double height_;
};

// Of an outermost roll.
double wing_length(const Trough& trough, int side) {
    return side > 0 ? trough.wing_roll : trough.wing_roll_right.value_or(trough.wing_roll);
}

}  // namespace

std::vector<SetRoll> rolls_of(const TransitionLayout& layout, const IdlerSet& set, double underside) {
    const SetBuilder builder(layout, set, underside);
    std::vector<SetRoll> rolls;
    Eigen::Vector3d left = builder.first_meeting(1), right = builder.first_meeting(-1);
    const std::vector<Facet> facets = layout.facets(set.angle, set.inner_angle);
    for (const Facet& facet : facets) {
        if (layout.trough.rolls > 2 && rolls.empty()) {
            const Roll centre = set.measured ? builder.measured(0, 0, layout.trough.centre_roll) : builder.centre();
            rolls.push_back({"centre", 0, facet, set.measured ? centre.centre.x() : set.x + set.offset, centre});
            continue;
        }
        const bool outermost = facet.end == facets.back().end;
        for (const int side : {1, -1}) {
            const double length = outermost ? wing_length(layout.trough, side) : layout.trough.inner_roll;
            const std::string name = std::string(outermost ? "wing " : "inner wing ") + (side > 0 ? "+y" : "-y");
            const Roll roll = set.measured ? builder.measured(rolls.size(), side, length)
                                           : builder.wing(side, facet.angle, length, side > 0 ? left : right);
            rolls.push_back({name, side, facet, set.x, roll});
        }
    }
    return rolls;
}

Lengthwise contact_lines(const TransitionLayout& layout, const IdlerSet& set) {
    if (set.measured) return lengthwise_of(*set.measured);
    const double tip = (layout.belt_width / 2 - layout.junction()) * std::sin(set.tilt);
    return {std::min({0.0, tip, set.offset}), std::max({0.0, tip, set.offset})};
}

Roll pulley_roll(const TransitionLayout& layout, double underside) {
    const double radius = layout.pulley.diameter / 2;
    const Eigen::Vector3d centre(0, 0, layout.pulley.lift - underside - radius);
    return {centre, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, layout.belt_width / 2 + 100, 5};
}

}  // namespace swale
