#pragma once

#include <vector>

namespace swale {

/// A place on a line that wants short spans: `size` within `reach`, growing by `growth` per mm beyond.
struct FinePlace {
    double position = 0;  ///< [mm]
    double size = 0;      ///< [mm]
    double reach = 0;     ///< [mm]
    double growth = 0.5;
};

/// Span ends from begin to end: no span longer than the places (or `longest`) want, and a break at every `pinned` coordinate.
/// The wanted size is h(x) = min(longest, size + growth max(0, |x - position| - reach)); each stretch between pinned breaks
/// gets the next whole number of spans above its integral of dx / h.
std::vector<double> graded_breaks(double begin, double end, double longest, const std::vector<FinePlace>& places,
                                  std::vector<double> pinned);

}  // namespace swale
