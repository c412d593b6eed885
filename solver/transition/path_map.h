#pragma once

#include "mesh/transition_layout.h"

#include <optional>
#include <vector>

namespace swale {

/// Takes the path along the belt's centre line of one arrangement to that of another with as many stations: pulley to pulley,
/// set to set, in proportion between them.
class PathMap {
  public:
    /// None where the number of stations differs.
    static std::optional<PathMap> between(const TransitionLayout& from, const TransitionLayout& to, int sets, double underside);

    /// Path of the other arrangement [mm].
    double at(double path) const;
    /// Path of the first arrangement that is taken there [mm].
    double from(double path) const;
    /// How far the straight line from set to set has moved at a path of the other arrangement [mm].
    struct Shift {
        double x = 0, z = 0;
    };
    Shift shift(double path) const;

  private:
    struct Place {
        double path, x, z;
    };
    static std::vector<Place> places_of(const TransitionLayout& layout, int sets, double underside);
    std::vector<Place> from_, to_;
};

}  // namespace swale
