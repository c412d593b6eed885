#pragma once

namespace swale {

/// The unstretched length, as `scale` of the length in space, at which a belt's end comes to its place.
class LengthSearch {
  public:
    /// The scale to try after one at which the end lay at `end` and missed its place by `miss` [mm]: first as if the end moved
    /// with the length, then by the secant.
    double next(double scale, double miss, double end);

  private:
    bool first_ = true;
    double last_scale_ = 0, last_miss_ = 0;
};

}  // namespace swale
