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

// Exposures without a pattern: anything around the mean.
Prediction without_pattern(const Prediction& empty) {
    Prediction prediction = empty;
    prediction.mean.assign(prediction.y.size(), 1);
    prediction.spread.assign(prediction.y.size(), 1);
    return prediction;
}

// What belts in their places predict for one roll, added up by their probability.
class PredictionSum {
  public:
    PredictionSum(const WearSurvey& survey, Explanation explanation) : width_(survey.run.width) {
        exposure_.explanation = explanation;
        exposure_.y = places(survey.roll_length);
        exposure_.mean.assign(exposure_.y.size(), 0);
        exposure_.spread.assign(exposure_.y.size(), 0);
    }

    const Prediction& empty() const { return exposure_; }

    void add(const Exposure& exposure, const Placement& placement, double depth, double probability) {
        for (std::size_t k = 0; k < exposure_.y.size(); ++k) {
            const double here = exposure_on_roll(exposure, placement, width_, exposure_.y[k]);
            exposure_.mean[k] += probability * here;
            exposure_.spread[k] += probability * here * here;
        }
        offsets_.emplace_back(placement.offset, probability);
        depth_ += probability * depth;
        total_ += probability;
    }

    RollPrediction mean() const {
        RollPrediction result{exposure_, fitted(offsets_), depth_ / total_};
        for (std::size_t k = 0; k < exposure_.y.size(); ++k) {
            const double middle = exposure_.mean[k] / total_;
            result.exposure.mean[k] = middle;
            result.exposure.spread[k] = std::sqrt(std::max(0.0, exposure_.spread[k] / total_ - middle * middle));
        }
        result.offset.low -= offset_step / 2 * width_;
        result.offset.high += offset_step / 2 * width_;
        return result;
    }

  private:
    double width_;
    Prediction exposure_;
    std::vector<std::pair<double, double>> offsets_;
    double depth_ = 0, total_ = 0;
};

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
    PredictionSum sum(survey, explanation);
    if (explanation == Explanation::other) return {without_pattern(sum.empty()), {}, 0};
    const std::vector<Placement>& placements = evidence.placements_of(explanation);
    for (const LikelyBelt& likely : likely_belts(evidence, explanation)) {
        const std::vector<double> logs = evidence.placed(roll, *likely.belt, explanation);
        const double all = log_sum(logs);
        for (std::size_t k = 0; k < placements.size(); ++k) {
            const double share = std::exp(logs[k] - all);
            if (share < negligible) continue;
            const Exposure& exposure = likely.belt->exposure[placements[k].wander];
            sum.add(exposure, placements[k], evidence.rolls[roll].depth_per_exposure(exposure, placements[k]),
                    likely.probability * share);
        }
    }
    return sum.mean();
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
