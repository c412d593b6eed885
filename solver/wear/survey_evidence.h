#pragma once

#include "solver/wear/hypotheses.h"
#include "solver/wear/roll_evidence.h"

#include <vector>

namespace swale {

/// ln of the probability of what is read on each roll from one belt under one explanation.
struct BeltEvidence {
    const BeltHypothesis* belt = nullptr;
    Explanation explanation = Explanation::flat;
    std::vector<double> on_roll;
    double on_all = 0;  ///< ln, of all rolls together; of a mistracked belt with one roll at least off the middle
};

/// A survey held against all belts that could have worn the rolls so.
struct SurveyEvidence {
    PlacementPriors placements;
    std::vector<RollLikelihood> rolls;
    std::vector<double> other;  ///< ln, without any belt's pattern, on each roll
    std::vector<BeltHypothesis> belts;
    std::vector<BeltEvidence> belt_evidence;

    const std::vector<Placement>& placements_of(Explanation explanation) const;
    /// ln of weight and likelihood of each placement on a roll.
    std::vector<double> placed(int roll, const BeltHypothesis& belt, Explanation explanation) const;
};

SurveyEvidence survey_evidence(const WearSurvey& survey, const ShapeTable& table);

/// Of each explanation, prior included: from all rolls, or from one alone.
Likelihoods likelihoods(const SurveyEvidence& evidence);
Likelihoods likelihoods_alone(const SurveyEvidence& evidence, int roll);

/// ln of the probability of all readings with one belt on all rolls, less that of each roll with a belt of its own.
double agreement_of_rolls(const SurveyEvidence& evidence);

/// Belts of an explanation with their probabilities, together 1; those below a five-hundredth are left out.
struct LikelyBelt {
    const BeltHypothesis* belt = nullptr;
    double probability = 0;
};
std::vector<LikelyBelt> likely_belts(const SurveyEvidence& evidence, Explanation explanation);

}  // namespace swale
