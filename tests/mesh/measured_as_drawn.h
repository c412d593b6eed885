#pragma once

#include "mesh/idler_set.h"

#include <memory>

namespace swale {

/// What an exact survey of a drawn set finds.
inline MeasuredSet measured_as_drawn(const TransitionLayout& layout, const IdlerSet& set) {
    MeasuredSet measured;
    for (const SetRoll& roll : rolls_of(layout, set, 0)) {
        const Eigen::Vector3d middle = roll.roll.centre + roll.roll.radius * roll.roll.up - Eigen::Vector3d(set.x, 0, set.lift);
        const Eigen::Vector3d half = (roll.side < 0 ? -1 : 1) * roll.roll.half_length * roll.roll.axis;
        measured.rolls.push_back({middle - half, middle + half});
    }
    measured.angle = set.angle;
    return measured;
}

/// The survey of a set as seen in a mirror at the conveyor's centre line.
inline MeasuredSet mirrored(const MeasuredSet& set) {
    MeasuredSet image = set;
    const std::size_t pairs_from = set.rolls.size() % 2;
    const auto flip = [](const Eigen::Vector3d& p) { return Eigen::Vector3d(p.x(), -p.y(), p.z()); };
    for (std::size_t k = 0; k < set.rolls.size(); ++k) {
        const std::size_t other = k < pairs_from ? k : pairs_from + ((k - pairs_from) ^ 1);
        image.rolls[k] = {flip(set.rolls[other].left), flip(set.rolls[other].right)};
    }
    return image;
}

/// Puts a survey in the place of the first full set.
inline void measure_first_set(TransitionLayout& layout, const MeasuredSet& measured) {
    layout.measured = {std::make_shared<const MeasuredSet>(measured)};
}

}  // namespace swale
