#pragma once

#include "solver/wear/survey_evidence.h"

#include <utility>
#include <vector>

namespace swale {

/// Mean and 5 % and 95 % ends of values with their probabilities.
Fitted fitted(std::vector<std::pair<double, double>> values);

/// How a belt of an explanation would have run over a roll, as all readings leave it open.
struct RollPrediction {
    Prediction exposure;
    Fitted offset;                  ///< [mm]
    double depth_per_exposure = 0;  ///< [mm]
};
RollPrediction predict(const WearSurvey& survey, const SurveyEvidence& evidence, int roll, Explanation explanation);

/// The place where a further look would tell two explanations apart best; absent where none would.
std::optional<FurtherLook> further_look(const WearSurvey& survey, const std::vector<RollJudgement>& rolls, Explanation first,
                                        Explanation second);

}  // namespace swale
