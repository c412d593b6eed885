#pragma once

#include "mesh/transition_layout.h"
#include "mesh/trough_profile.h"

#include <Eigen/Core>

#include <vector>

namespace swale {

/// Where Newton starts from: the ruled surface through the flat pulley line and the profiles of all sets, with its kinks
/// rounded along the belt, and on a sliding pulley the wrap.
class StartSurface {
  public:
    StartSurface(const TransitionLayout& layout, int sets, double underside);

    /// Position for a path along the centre line (negative on the wrap) and y across the flat belt [mm].
    Eigen::Vector3d at(double path, double y) const;

  private:
    struct Section {
        double x, path;
        TroughProfile profile;
    };
    double x_at(double path) const;
    Eigen::Vector2d ruled(double x, double y) const;

    std::vector<Section> sections_;
    double end_;
    double rounding_;       // half-width of the running mean [mm]
    double pulley_radius_;  // of the mid-surface on the pulley
    double pulley_height_;
    bool held_;
};

}  // namespace swale
