#pragma once

#include "mesh/measured_set.h"
#include "mesh/roll.h"
#include "mesh/transition_layout.h"

#include <memory>
#include <string>
#include <vector>

namespace swale {

/// One set of the model, intermediate or full, in the order along the belt.
struct IdlerSet {
    std::string name;  ///< "station 1", "set 2"
    double x = 0;      ///< in space from the pulley's top dead centre [mm]
    double angle = 0;  ///< [rad]
    double lift = 0;   ///< of its centre roll above the full sets [mm]
    Support support = Support::rolls;
    double path = 0;         ///< from the pulley to the set along the belt's centre line, straight from set to set [mm]
    double inner_angle = 0;  ///< of five rolls [rad]
    double tilt = 0;         ///< of its wing rolls towards +x [rad]
    double offset = 0;       ///< of its centre roll along x [mm]
    std::shared_ptr<const MeasuredSet> measured = {};  ///< its rolls as they stand; none: as drawn
};

/// Stations by distance, then `sets` full sets. Behind a raised or lowered pulley the belt's path to a set is longer than x. A
/// held trough has the belt's lengths given: `path` is x there.
std::vector<IdlerSet> idler_sets(const TransitionLayout& layout, int sets);

/// A roll of a set.
struct SetRoll {
    std::string name;  ///< "centre", "inner wing +y", "wing -y"
    int side = 0;      ///< 0: centre roll, +1: left (+y), -1: right
    Facet facet;       ///< what of the belt lies on it
    double x = 0;      ///< of the plane it stands in [mm]
    Roll roll;
};

/// The rolls of a set, from the centre outwards, left before right. `underside` is the distance of the belt's mid-surface from
/// the rolls [mm]: the rolls' contact lines, produced, meet one another in the set's plane, the innermost at y = junction,
/// z = lift - underside; each roll ends half a gap before such a point. Measured rolls stand where they were measured, those at
/// the sides turned about the innermost one's inner end by what the set's angle differs from the measured one; they have the
/// length of drawn ones.
std::vector<SetRoll> rolls_of(const TransitionLayout& layout, const IdlerSet& set, double underside);

/// How far behind and ahead of a set's plane the belt meets its rolls [mm].
Lengthwise contact_lines(const TransitionLayout& layout, const IdlerSet& set);

/// The terminal pulley as a roll wider than the belt.
Roll pulley_roll(const TransitionLayout& layout, double underside);

}  // namespace swale
