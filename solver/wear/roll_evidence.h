#pragma once

#include "solver/wear/hypotheses.h"

#include <functional>
#include <vector>

namespace swale {

/// How a belt runs over a roll: where its centre line is, how much more it bears on the left, how it wanders.
struct Placement {
    double offset = 0;  ///< from the roll's middle, positive to the left [mm]
    double tilt = 0;    ///< exposure times 1 + tilt 2y/W
    int wander = 0;     ///< index
    double log_weight = 0;
};

/// Offsets in the middle are so far apart, off it some 18 mm; in widths.
inline constexpr double offset_step = 0.02;

/// A mistracked belt runs in the middle of so many of several rolls, if off it on another.
inline constexpr double mistracked_in_middle = 0.2;

/// Where belts run before anyone looks. In the middle: within 4 % of the width. Off it: farther, up to where the belt's edge
/// leaves the roll, or with more load on one side.
struct PlacementPriors {
    std::vector<Placement> centred;     ///< of a flat belt in the middle
    std::vector<Placement> usual;       ///< of cupped and creased belts: seven tenths in the middle
    std::vector<Placement> off;         ///< of a flat belt off the middle
    std::vector<Placement> mistracked;  ///< off the middle or, where other rolls are off, in it
};

PlacementPriors placement_priors(const WearSurvey& survey);

/// ln of the probability of all that is read on a roll from a belt that runs so, integrated over what isn't known of the
/// readings: wear per exposure and noise of depths, what counts as worn and how often a mark is wrong.
class RollLikelihood {
  public:
    RollLikelihood(const SurveyedRoll& roll, double width);

    double log_likelihood(const Exposure& exposure, const Placement& placement) const;
    /// Without any belt's pattern.
    double log_likelihood_of_other() const;
    /// Depth where the exposure is 1 that fits best [mm]; 0 without depths.
    double depth_per_exposure(const Exposure& exposure, const Placement& placement) const;

  private:
    double depths(const std::vector<double>& predicted) const;
    std::vector<double> predicted_roots(const Exposure& exposure, const Placement& placement) const;
    double bands(const Exposure& exposure, const Placement& placement) const;

    double width_;
    std::vector<double> place_, root_;  // of depths: y and sqrt(depth)
    double scale_ = 0, sum_of_squares_ = 0;
    std::vector<MarkedBand> bands_;
};

/// ln of the sum of exponentials.
double log_sum(const std::vector<double>& terms);

/// exposure (1 + tilt 2y/W) at a place of the roll; not below 0.
double exposure_on_roll(const Exposure& exposure, const Placement& placement, double width, double y);

}  // namespace swale
