#include "solver/wear/predictions.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr double step = 12;           // along a roll [mm]
constexpr double negligible = 0.003;  // probability of a placement
constexpr double margin = 20;         // a further look is no nearer to a reading or to a roll's end [mm]
constexpr double least_contrast = 1;

// What a look at a place would stray by: a fifth of the exposure and a tenth of an even one.
double stray_of_look(double exposure) {
    return 0.2 * exposure + 0.1;
}

std::vector<double> places(double roll_length) {
    const int count = 2 * static_cast<int>(roll_length / 2 / step) + 1;
    std::vector<double> y;
    for (int k = 0; k < count; ++k) y.push_back((k - count / 2) * step);
    return y;
}

void add(const Exposure& exposure, const Placement& placement, double width, double probability, Prediction& prediction) {
    for (std::size_t k = 0; k < prediction.y.size(); ++k) {
        const double here = exposure_on_roll(exposure, placement, width, prediction.y[k]);
        prediction.mean[k] += probability * here;
        prediction.spread[k] += probability * here * here;
    }
}

// Exposures without a pattern: anything around the mean.
Prediction without_pattern(const Prediction& empty) {
    Prediction prediction = empty;
    prediction.mean.assign(prediction.y.size(), 1);
    prediction.spread.assign(prediction.y.size(), 1);
    return prediction;
}

bool was_read(const SurveyedRoll& roll, double y) {
    const auto near = [&](const DepthReading& reading) { return std::abs(reading.y - y) < margin; };
    return std::any_of(roll.depths.begin(), roll.depths.end(), near);
}

const Prediction& of(const RollJudgement& roll, Explanation explanation) {
    return roll.predictions[static_cast<int>(explanation)];
}

FurtherLook look_at(const RollJudgement& roll, std::size_t k, Explanation first, Explanation second) {
    const Prediction &a = of(roll, first), &b = of(roll, second);
    FurtherLook look{first, second, roll.name, a.y[k], a.mean[k], b.mean[k], a.spread[k], b.spread[k], 0};
    const double stray = stray_of_look((look.first + look.second) / 2);
    look.contrast = std::abs(look.first - look.second) / std::hypot(look.first_spread, look.second_spread, stray);
    return look;
}

}  // namespace

Fitted fitted(std::vector<std::pair<double, double>> values) {
    std::sort(values.begin(), values.end());
    Fitted result;
    double total = 0, sum = 0;
    for (const auto& [value, probability] : values) {
        total += probability;
        result.mean += value * probability;
    }
    result.mean /= total;
    result.low = values.front().first;
    result.high = values.back().first;
    for (const auto& [value, probability] : values) {
        if (sum < 0.05 * total && sum + probability >= 0.05 * total) result.low = value;
        if (sum < 0.95 * total && sum + probability >= 0.95 * total) result.high = value;
        sum += probability;
    }
    return result;
}

RollPrediction predict(const WearSurvey& survey, const SurveyEvidence& evidence, int roll, Explanation explanation) {
    RollPrediction result;
    Prediction& prediction = result.exposure;
    prediction.explanation = explanation;
    prediction.y = places(survey.roll_length);
    if (explanation == Explanation::other) return {without_pattern(prediction), {}, 0};
    prediction.mean.assign(prediction.y.size(), 0);
    prediction.spread.assign(prediction.y.size(), 0);
    std::vector<std::pair<double, double>> offsets;
    const std::vector<Placement>& placements = evidence.placements_of(explanation);
    double total = 0;
    for (const LikelyBelt& likely : likely_belts(evidence, explanation)) {
        const std::vector<double> logs = evidence.placed(roll, *likely.belt, explanation);
        const double sum = log_sum(logs);
        for (std::size_t k = 0; k < placements.size(); ++k) {
            const double share = std::exp(logs[k] - sum);
            if (share < negligible) continue;
            const Exposure& exposure = likely.belt->exposure[placements[k].wander];
            const double probability = likely.probability * share;
            add(exposure, placements[k], survey.run.width, probability, prediction);
            offsets.emplace_back(placements[k].offset, probability);
            result.depth_per_exposure += probability * evidence.rolls[roll].depth_per_exposure(exposure, placements[k]);
            total += probability;
        }
    }
    for (std::size_t k = 0; k < prediction.y.size(); ++k) {
        prediction.mean[k] /= total;
        prediction.spread[k] = std::sqrt(std::max(0.0, prediction.spread[k] / total - std::pow(prediction.mean[k], 2)));
    }
    result.offset = fitted(offsets);
    result.offset.low -= offset_step / 2 * survey.run.width;
    result.offset.high += offset_step / 2 * survey.run.width;
    result.depth_per_exposure /= total;
    return result;
}

std::optional<FurtherLook> further_look(const WearSurvey& survey, const std::vector<RollJudgement>& rolls, Explanation first,
                                        Explanation second) {
    FurtherLook best;
    for (std::size_t r = 0; r < rolls.size(); ++r)
        for (std::size_t k = 0; k < of(rolls[r], first).y.size(); ++k) {
            const double y = of(rolls[r], first).y[k];
            if (std::abs(y) > survey.roll_length / 2 - margin || was_read(survey.rolls[r], y)) continue;
            const FurtherLook look = look_at(rolls[r], k, first, second);
            if (look.contrast > best.contrast) best = look;
        }
    if (best.contrast < least_contrast) return std::nullopt;
    return best;
}

}  // namespace swale
