#pragma once

#include "mesh/patch.h"
#include "mesh/quadrature.h"
#include "solver/shell/lane_point.h"

namespace swale {

/// The four cubic splines of a span at one point of its line rule, in each lane.
struct LaneBasis {
    Lanes f[3][4];  ///< value, slope, curvature of each
    Lanes weight, position;
};

/// Four spans side by side, one a lane: their control points and line rules. A batch that isn't full repeats its last span
/// with weight zero.
class SpanBatch {
  public:
    /// Spans `first` to `first` + 3 in the order along * across.spans() + across.
    SpanBatch(const Patch& patch, const LineRule& along, const LineRule& across, int first, const ControlPoints& points);

    int filled() const { return filled_; }
    const SpanNodes& nodes(int lane) const { return nodes_[lane]; }
    int points_along() const { return points_along_; }
    int points_across() const { return points_across_; }
    const LaneBasis& along(int k) const { return along_[k]; }
    const LaneBasis& across(int l) const { return across_[l]; }

    /// Calls visit(k, l, jet) for every point, k along and l across.
    template <class Visit>
    void for_each_jet(const Visit& visit) const {
        for (int k = 0; k < points_along_; ++k) {
            LaneVector rows[3][4];
            contract_along(along_[k], rows);
            for (int l = 0; l < points_across_; ++l) visit(k, l, jet_of(rows, across_[l]));
        }
    }

    /// Spreads a gradient with respect to the jet of point (k, l) over the 16 control points.
    void add_gradient(int k, int l, const LaneJet& gradient, LaneVector (&sum)[16]) const;

  private:
    static constexpr int most_points = 8;  // of a gauss_rule
    void contract_along(const LaneBasis& basis, LaneVector (&rows)[3][4]) const;
    static LaneJet jet_of(const LaneVector (&rows)[3][4], const LaneBasis& basis);

    int filled_, points_along_, points_across_;
    SpanNodes nodes_[lanes];
    LaneVector control_[16];
    LaneBasis along_[most_points], across_[most_points];
};

}  // namespace swale
