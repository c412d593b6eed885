#include "mesh/idler_set.h"

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

}  // namespace

std::vector<IdlerSet> idler_sets(const TransitionLayout& layout, int sets) {
    const Trough& trough = layout.trough;
    const double tilt = layout.running_direction() * trough.wing_tilt;
    std::vector<IdlerSet> all;
    int number = 0;
    for (const Station& station : layout.stations)
        all.push_back({"station " + std::to_string(++number), station.at, station.angle, layout.lift_of(station),
                       station.support, 0, layout.inner_angle_of(station), tilt, trough.centre_offset});
    for (int k = 0; k < sets; ++k)
        all.push_back({"set " + std::to_string(k + 1), layout.distance + k * trough.spacing, trough.angle, 0, trough.support, 0,
                       trough.inner_angle, tilt, trough.centre_offset});
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

  private:
    double radius() const { return trough_.roll_diameter / 2; }

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
            rolls.push_back({"centre", 0, facet, set.x + set.offset, builder.centre()});
            continue;
        }
        const bool outermost = facet.end == facets.back().end;
        for (const int side : {1, -1}) {
            const double length = outermost ? wing_length(layout.trough, side) : layout.trough.inner_roll;
            const std::string name = std::string(outermost ? "wing " : "inner wing ") + (side > 0 ? "+y" : "-y");
            rolls.push_back({name, side, facet, set.x, builder.wing(side, facet.angle, length, side > 0 ? left : right)});
        }
    }
    return rolls;
}

Roll pulley_roll(const TransitionLayout& layout, double underside) {
    const double radius = layout.pulley.diameter / 2;
    const Eigen::Vector3d centre(0, 0, layout.pulley.lift - underside - radius);
    return {centre, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, layout.belt_width / 2 + 100, 5};
}

}  // namespace swale
