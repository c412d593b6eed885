#pragma once

#include "mesh/roll.h"

#include <vector>

namespace swale {

/// A roll as it was measured, by the ends of its contact line: the line of its shell that is turned to the belt, with the
/// axis in a plane square to x where the roll is. From the plane of its set, from the conveyor's centre line, and above the
/// height of its set [mm].
struct MeasuredRoll {
    Eigen::Vector3d right = Eigen::Vector3d::Zero();  ///< the end towards -y
    Eigen::Vector3d left = Eigen::Vector3d::Zero();
};

/// An idler set as it was measured. Lengths in mm, angles in rad.
struct MeasuredSet {
    std::vector<MeasuredRoll> rolls;  ///< in the order of rolls_of: from the centre outwards, left before right
    double angle = 0;                 ///< mean of its outermost rolls
    double ahead = 0;                 ///< of a full set: its plane beyond the place that distance and spacing give it
    double height = 0;                ///< of a full set: above the line of the sets that are not measured
};

/// Unit vector along a roll's axis, from right to left, and the one from its axis to the contact line, which has no part along
/// x. The roll must not lie along x.
struct RollDirections {
    Eigen::Vector3d axis, up;
};
RollDirections directions_of(const MeasuredRoll& measured);

/// Angle to the horizontal in the plane across the conveyor, positive where the left end is the higher [rad].
double slope_of(const MeasuredRoll& measured);

/// Left and right are each other's mirror image.
bool same_left_and_right(const MeasuredSet& set);

/// How far behind and ahead of the set's plane its roll ends stand along x; `behind` is zero or negative [mm].
struct Lengthwise {
    double behind = 0, ahead = 0;
};
Lengthwise lengthwise_of(const MeasuredSet& set);

}  // namespace swale
