#pragma once

#include "mesh/roll.h"
#include "mesh/transition_layout.h"

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
    double path = 0;  ///< from the pulley to the set along the belt's centre line, straight from set to set [mm]
};

/// Stations by distance, then `sets` full sets. Behind a raised or lowered pulley the belt's path to a set is longer than x. A
/// held trough has the belt's lengths given: `path` is x there.
std::vector<IdlerSet> idler_sets(const TransitionLayout& layout, int sets);

struct SetRolls {
    Roll centre, wing_left, wing_right;  ///< left: +y
};

/// The three rolls of a set. `underside` is the distance of the belt's mid-surface from the rolls [mm]: the rolls' contact
/// lines, produced, meet at y = junction, z = lift - underside; each roll ends half a gap before that point.
SetRolls rolls_of(const TransitionLayout& layout, const IdlerSet& set, double underside);

/// The terminal pulley as a roll wider than the belt.
Roll pulley_roll(const TransitionLayout& layout, double underside);

}  // namespace swale
