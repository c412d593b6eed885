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
    std::vector<IdlerSet> all;
    int number = 0;
    for (const Station& station : layout.stations)
        all.push_back(
            {"station " + std::to_string(++number), station.at, station.angle, layout.lift_of(station), station.support});
    for (int k = 0; k < sets; ++k)
        all.push_back({"set " + std::to_string(k + 1), layout.distance + k * layout.trough.spacing, layout.trough.angle, 0,
                       layout.trough.support});
    add_paths(layout, all);
    return all;
}

namespace {

// `side` is +1 for the left wing (+y), -1 for the right one.
Roll wing_roll(const TransitionLayout& layout, const IdlerSet& set, double underside, double side) {
    const Trough& trough = layout.trough;
    const Eigen::Vector3d meeting(set.x, side * layout.junction(), set.lift - underside);
    const Eigen::Vector3d outward(0, side * std::cos(set.angle), std::sin(set.angle));
    const Eigen::Vector3d up(0, -side * std::sin(set.angle), std::cos(set.angle));
    const double radius = trough.roll_diameter / 2;
    const Eigen::Vector3d centre = meeting + (trough.roll_gap + trough.wing_roll) / 2 * outward - radius * up;
    return {centre, outward, up, radius, trough.wing_roll / 2, trough.roll_end_radius};
}

}  // namespace

SetRolls rolls_of(const TransitionLayout& layout, const IdlerSet& set, double underside) {
    const Trough& trough = layout.trough;
    const double radius = trough.roll_diameter / 2;
    const Eigen::Vector3d centre(set.x, 0, set.lift - underside - radius);
    return {
        {centre, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, trough.centre_roll / 2, trough.roll_end_radius},
        wing_roll(layout, set, underside, 1),
        wing_roll(layout, set, underside, -1)};
}

Roll pulley_roll(const TransitionLayout& layout, double underside) {
    const double radius = layout.pulley.diameter / 2;
    const Eigen::Vector3d centre(0, 0, layout.pulley.lift - underside - radius);
    return {centre, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(), radius, layout.belt_width / 2 + 100, 5};
}

}  // namespace swale
