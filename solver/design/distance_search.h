#pragma once

#include "solver/design/trial.h"

#include <functional>
#include <optional>
#include <vector>

namespace swale {

/// A distance that was tried [mm], its trial with slopes by distance, if they are known.
struct DistanceTrial {
    double distance = 0;
    Trial trial;
};

/// The next distance to try, and what for.
struct DistanceGuess {
    double distance = 0;
    bool to_fail = false;  ///< looked for as one that fails: the state that binds is enough
};

/// The shortest distance that passes, in whole mm, from trials that someone else makes: Newton on the headroom that is least,
/// each linear in 1/L^2, as the excess of straight strips goes; kept between a distance that fails and one that passes, and
/// closed with one that fails just below. Not fooled by a kink: only what was tried counts.
class DistanceSearch {
  public:
    DistanceSearch(double shortest, double longest, double relative);

    void take(DistanceTrial trial);
    /// None when the answer is closed in or the bounds are met.
    std::optional<DistanceGuess> next() const;
    const std::optional<DistanceTrial>& passing() const { return passes_; }
    const std::optional<DistanceTrial>& failing() const { return fails_; }

  private:
    bool closed() const;
    double within(double distance) const;
    double outwards() const;

    double shortest_, longest_, relative_;
    std::optional<DistanceTrial> passes_, fails_;
    std::optional<DistanceTrial> last_;  // whose slopes are known
};

/// Where the least of the headrooms would vanish by their slopes (the first by distance) [mm]; absent where they do not tell.
std::optional<double> predicted_root(const DistanceTrial& trial);

/// A headroom at another distance by its slope.
double predicted_share(const Headroom& headroom, double distance, double other);

}  // namespace swale
