#pragma once

#include <vector>

namespace swale {

/// A smooth curve through points that rises and falls nowhere but where they do: cubic pieces whose slopes are weighted
/// harmonic means (Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300).
class MonotoneCurve {
  public:
    /// `x` rises; as many `y`; at least two.
    MonotoneCurve(std::vector<double> x, std::vector<double> y);

    /// `at` within the piece from x[piece] to x[piece + 1].
    double value(std::size_t piece, double at) const;
    std::size_t pieces() const { return x_.size() - 1; }

  private:
    std::vector<double> x_, y_, slope_;
};

}  // namespace swale
