#pragma once

#include "solver/sizing.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// How nearly the numbers of a case are known or kept: bounds to either side within which 95 of 100 lie, as two standard
/// deviations of normal distributions, independent of one another. Zero: exact.
struct Tolerances {
    double tension = 0;             ///< share of each state's, all states alike
    double membrane_stiffness = 0;  ///< share of all of A
    double bending_stiffness = 0;   ///< share of all of D
    double mass = 0;                ///< share
    double distance = 0;            ///< [mm]
    double lift = 0;                ///< of the pulley [mm]
    double idler_place = 0;         ///< of each station [mm]
    double idler_angle = 0;         ///< of each station [rad]
    double idler_lift = 0;          ///< of each station [mm]
    double exceed = 0.05;           ///< wanted: a limit is exceeded no more often than this

    bool any() const;
};

/// What the tolerances do to one judged criterion in one state.
struct CriterionSpread {
    std::string criterion, state, unit;
    double value = 0, limit = 0;    ///< as solved
    double headroom = 0;            ///< share of the limit that is left, the error taken off
    double deviation = 0;           ///< standard deviation of the value, to first order
    double headroom_deviation = 0;  ///< that of the headroom
    double exceeds = 0;             ///< probability that the limit is exceeded, to first order
    struct Part {
        std::string parameter;
        double share;  ///< of the variance
    };
    std::vector<Part> parts;  ///< largest first
    /// Of whole solutions with numbers drawn at random; absent without samples.
    std::optional<double> sampled_deviation, sampled_exceeds;
};

struct ToleranceSpread {
    TransitionResult result;                ///< as given
    std::vector<CriterionSpread> criteria;  ///< most likely exceeded first
    double any_exceeds = 0;                 ///< probability that any limit is, to first order
    std::optional<double> sampled_any_exceeds;
    int samples = 0;                 ///< that have a solution
    int samples_without = 0;         ///< that have none; they count as exceeding
    std::optional<double> distance;  ///< at which no limit is exceeded more often than wanted; absent: none within the bounds
    std::string why_none;            ///< why there is no spread at all; empty if there is
};

/// From the derivatives of every criterion; `samples` solutions with all numbers drawn at random hold it against the belt as it
/// is, not as it is to first order. `bounds`: of the distance that is looked for.
ToleranceSpread spread_of(const TransitionCase& given, const Tolerances& tolerances, const SizingBounds& bounds, int samples,
                          const ProgressListener& listener = {});

}  // namespace swale
