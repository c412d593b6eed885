#pragma once

#include "solver/wear_survey.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What could have worn the rolls so.
///   flat       a belt that lies flat and runs in the middle
///   cupped     curved over its whole width, to either side
///   creased    bent along one or both junction lines: junction failure
///   both       creased and cupped
///   mistracked a flat belt that runs off the middle or bears on one side
///   other      none of these: readings without the pattern of any belt on a roll
enum class Explanation { flat, cupped, creased, both, mistracked, other };
inline constexpr int explanations = 6;

/// "a flat belt in the middle", ...
std::string name_of(Explanation explanation);

/// Probability of each explanation, in the order of the enumeration.
struct Likelihoods {
    double of[explanations] = {};
    double operator[](Explanation e) const { return of[static_cast<int>(e)]; }
    Explanation best() const;
    Explanation second() const;
    /// Of creases and of cupping, each with the other or without: a belt with both has both.
    double any_crease() const { return (*this)[Explanation::creased] + (*this)[Explanation::both]; }
    double any_cupping() const { return (*this)[Explanation::cupped] + (*this)[Explanation::both]; }
};

/// A fitted value with the 5 % and 95 % ends of its probability.
struct Fitted {
    double mean = 0, low = 0, high = 0;
};

/// Predicted exposure across a roll, 1 where it is as of a belt that presses evenly.
struct Prediction {
    Explanation explanation = Explanation::flat;
    std::vector<double> y, mean, spread;  ///< [mm]; spread: standard deviation
};

/// What one roll says.
struct RollJudgement {
    std::string name;
    int readings = 0;               ///< that say something
    Likelihoods alone;              ///< from this roll only
    Fitted offset;                  ///< of the belt from the roll's middle, under the explanation that all rolls favour [mm]
    double depth_per_exposure = 0;  ///< depth where the exposure is 1, under the same [mm]; 0 without depths
    std::vector<Prediction> predictions;  ///< flat, cupped, creased, mistracked and the best, in the order of the enumeration
};

/// What further look would tell the two best explanations apart.
struct FurtherLook {
    Explanation best = Explanation::flat, rival = Explanation::flat;
    std::string roll;
    double y = 0;                  ///< [mm]
    double first = 0, second = 0;  ///< exposure that the best and the second explanation expect there
    double first_spread = 0, second_spread = 0;
    double contrast = 0;  ///< their difference in standard deviations of what a look would give
};

/// What a survey means.
struct WearDiagnosis {
    Likelihoods likelihoods;             ///< of all rolls together
    std::optional<Explanation> verdict;  ///< the likeliest explanation; absent: can't tell
    bool junction_failure = false;       ///< creased, cupped or not, is as likely as a verdict has to be
    bool cupping = false;                ///< cupped, creased or not, is so
    bool perhaps_creased = false;        ///< a verdict of cupping that leaves open whether there are creases too
    std::string grounds;                 ///< why this verdict, or why none
    Fitted cupping_rise;                 ///< rise of the free belt over its width, positive: edges away from the roll [mm]
    Fitted crease_angle;                 ///< [rad]
    double left_crease = 0, right_crease = 0;  ///< probability that, creased, it is so on the left, on the right
    Fitted stiffness;                          ///< factor on D22 as given
    std::vector<RollJudgement> rolls;
    bool rolls_disagree = false;
    std::string disagreement;  ///< which rolls say what; empty if they agree
    std::optional<FurtherLook> further;
    int solved = 0;                     ///< belts on a roll that were solved for it
    std::vector<std::string> failures;  ///< of those, sentences where none was found
};

/// A verdict has to be so likely.
inline constexpr double stated_level = 0.95;
/// Fewer readings that say something than these are no survey.
inline constexpr int fewest_readings = 4;

WearDiagnosis diagnose(const WearSurvey& survey);

}  // namespace swale
