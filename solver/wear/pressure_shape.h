#pragma once

#include "solver/return_roll.h"

#include <array>
#include <vector>

namespace swale {

/// What presses on a roll, as places that bear equal shares of its force: `shares` of them from the centre line to each edge,
/// 0 first. Shapes are mixed place by place: a heap of pressure moves between two shapes in place of fading out in one spot
/// and in at another.
struct PressureShape {
    static constexpr int shares = 60;
    std::array<double, shares> left{}, right{};  ///< |y| [mm]
};

/// Of a solved contact.
PressureShape pressure_shape(const std::vector<RollPressure>& pressure);

/// (1 - share) from + share to.
PressureShape mixed(const PressureShape& from, const PressureShape& to, double share);

/// The left half of one, the right half of the other. A belt whose middle lies on the roll does not know beyond it what the
/// other side does.
PressureShape joined(const PressureShape& left, const PressureShape& right);

/// Force on the roll across it, 1 where it is as if spread evenly over the belt: `shape` blurred by a belt that wanders.
class Exposure {
  public:
    /// `wander`: standard deviation of the belt's sideways place [mm].
    Exposure(const PressureShape& shape, double width, double wander);

    /// y from the belt's mean centre line [mm].
    double at(double y) const;
    /// Mean over a band.
    double over(double from, double to) const;

  private:
    double integral_to(double y) const;
    double begin_;
    std::vector<double> value_, integral_;
};

}  // namespace swale
