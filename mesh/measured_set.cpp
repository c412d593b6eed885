#include "mesh/measured_set.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace swale {

RollDirections directions_of(const MeasuredRoll& measured) {
    const Eigen::Vector3d axis = (measured.left - measured.right).normalized();
    return {axis, Eigen::Vector3d::UnitX().cross(axis).normalized()};
}

double slope_of(const MeasuredRoll& measured) {
    const Eigen::Vector3d run = measured.left - measured.right;
    return std::atan2(run.z(), run.y());
}

bool same_left_and_right(const MeasuredSet& set) {
    constexpr double same = 1e-9;
    const auto mirrored = [](const Eigen::Vector3d& p) { return Eigen::Vector3d(p.x(), -p.y(), p.z()); };
    const auto alike = [&](const MeasuredRoll& left, const MeasuredRoll& right) {
        return (mirrored(left.left) - right.right).norm() <= same && (mirrored(left.right) - right.left).norm() <= same;
    };
    const std::size_t pairs_from = set.rolls.size() % 2;  // a centre roll is its own image
    if (pairs_from == 1 && !alike(set.rolls.front(), set.rolls.front())) return false;
    for (std::size_t k = pairs_from; k + 1 < set.rolls.size(); k += 2)
        if (!alike(set.rolls[k], set.rolls[k + 1])) return false;
    return true;
}

Lengthwise lengthwise_of(const MeasuredSet& set) {
    Lengthwise reach;
    for (const MeasuredRoll& roll : set.rolls)
        for (const double x : {roll.right.x(), roll.left.x()}) reach = {std::min(reach.behind, x), std::max(reach.ahead, x)};
    return reach;
}

}  // namespace swale
