#include "solver/wear/survey_evidence.h"

#include "solver/transition/workers.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

namespace swale {

namespace {

constexpr double negligible = 0.002;

using LogEvidence = std::function<double(const BeltEvidence&)>;

double log_weighted(const SurveyEvidence& evidence, Explanation explanation, const LogEvidence& of) {
    std::vector<double> terms;
    for (const BeltEvidence& entry : evidence.belt_evidence)
        if (entry.explanation == explanation) terms.push_back(std::log(entry.belt->weight) + of(entry));
    return log_sum(terms);
}

// ln of prior times evidence of each explanation.
std::vector<double> log_joint(const SurveyEvidence& evidence, const LogEvidence& of, double other) {
    std::vector<double> logs;
    for (int e = 0; e < explanations; ++e) {
        const auto explanation = static_cast<Explanation>(e);
        const double log_evidence = explanation == Explanation::other ? other : log_weighted(evidence, explanation, of);
        logs.push_back(std::log(prior_of(explanation)) + log_evidence);
    }
    return logs;
}

Likelihoods normalised(const std::vector<double>& logs) {
    const double sum = log_sum(logs);
    Likelihoods likelihoods;
    for (int e = 0; e < explanations; ++e) likelihoods.of[e] = std::exp(logs[e] - sum);
    return likelihoods;
}

double other_on_all(const SurveyEvidence& evidence) {
    return std::accumulate(evidence.other.begin(), evidence.other.end(), 0.0);
}

std::vector<double> joint_of_all(const SurveyEvidence& evidence) {
    return log_joint(
        evidence, [](const BeltEvidence& entry) { return entry.on_all; }, other_on_all(evidence));
}

std::vector<double> joint_alone(const SurveyEvidence& evidence, int roll) {
    return log_joint(
        evidence, [roll](const BeltEvidence& entry) { return entry.on_roll[roll]; }, evidence.other[roll]);
}

// Every belt under its explanation, the flat one under two.
std::vector<BeltEvidence> entries(const std::vector<BeltHypothesis>& belts) {
    std::vector<BeltEvidence> all;
    for (const BeltHypothesis& belt : belts) {
        all.push_back({&belt, belt.explanation, {}, 0});
        if (belt.explanation == Explanation::flat) all.push_back({&belt, Explanation::mistracked, {}, 0});
    }
    return all;
}

double weighed(const SurveyEvidence& evidence, int roll, const BeltHypothesis& belt, const std::vector<Placement>& placements) {
    std::vector<double> logs;
    for (const Placement& placement : placements)
        logs.push_back(placement.log_weight + evidence.rolls[roll].log_likelihood(belt.exposure[placement.wander], placement));
    return log_sum(logs);
}

// Each roll in the middle or off it, less all rolls in the middle: (prod(m c + (1 - m) o) - prod(m c))/(1 - m^n).
void weigh_mistracked(const SurveyEvidence& evidence, BeltEvidence& entry) {
    const double m = mistracked_in_middle;
    double either = 0, middle = 0;
    const int rolls = static_cast<int>(evidence.rolls.size());
    for (int roll = 0; roll < rolls; ++roll) {
        const double off = weighed(evidence, roll, *entry.belt, evidence.placements.off);
        const double centred = weighed(evidence, roll, *entry.belt, evidence.placements.centred);
        entry.on_roll.push_back(off);
        either += log_sum({std::log(m) + centred, std::log(1 - m) + off});
        middle += std::log(m) + centred;
    }
    entry.on_all = either + std::log1p(-std::exp(std::min(middle - either, -1e-12))) - std::log1p(-std::pow(m, rolls));
}

void weigh(const SurveyEvidence& evidence, BeltEvidence& entry) {
    if (entry.explanation == Explanation::mistracked) return weigh_mistracked(evidence, entry);
    for (std::size_t roll = 0; roll < evidence.rolls.size(); ++roll) {
        const std::vector<Placement>& placements = evidence.placements_of(entry.explanation);
        entry.on_roll.push_back(weighed(evidence, static_cast<int>(roll), *entry.belt, placements));
        entry.on_all += entry.on_roll.back();
    }
}

// Every other entry on each of two cores.
void weigh_all(SurveyEvidence& evidence) {
    Workers workers;
    std::vector<std::future<bool>> halves;
    for (std::size_t first = 0; first < 2; ++first)
        halves.push_back(workers.run([&evidence, first] {
            for (std::size_t k = first; k < evidence.belt_evidence.size(); k += 2) weigh(evidence, evidence.belt_evidence[k]);
            return true;
        }));
    for (std::future<bool>& half : halves) half.get();
}

}  // namespace

const std::vector<Placement>& SurveyEvidence::placements_of(Explanation explanation) const {
    if (explanation == Explanation::flat) return placements.centred;
    return explanation == Explanation::mistracked ? placements.mistracked : placements.usual;
}

std::vector<double> SurveyEvidence::placed(int roll, const BeltHypothesis& belt, Explanation explanation) const {
    std::vector<double> logs;
    for (const Placement& placement : placements_of(explanation))
        logs.push_back(placement.log_weight + rolls[roll].log_likelihood(belt.exposure[placement.wander], placement));
    return logs;
}

SurveyEvidence survey_evidence(const WearSurvey& survey, const ShapeTable& table) {
    SurveyEvidence evidence;
    evidence.placements = placement_priors(survey);
    for (const SurveyedRoll& roll : survey.rolls) evidence.rolls.emplace_back(roll, survey.run.width);
    for (const RollLikelihood& roll : evidence.rolls) evidence.other.push_back(roll.log_likelihood_of_other());
    evidence.belts = belt_hypotheses(survey, table);
    evidence.belt_evidence = entries(evidence.belts);
    weigh_all(evidence);
    return evidence;
}

Likelihoods likelihoods(const SurveyEvidence& evidence) {
    return normalised(joint_of_all(evidence));
}

Likelihoods likelihoods_alone(const SurveyEvidence& evidence, int roll) {
    return normalised(joint_alone(evidence, roll));
}

double agreement_of_rolls(const SurveyEvidence& evidence) {
    double apart = 0;
    for (std::size_t roll = 0; roll < evidence.rolls.size(); ++roll)
        apart += log_sum(joint_alone(evidence, static_cast<int>(roll)));
    return log_sum(joint_of_all(evidence)) - apart;
}

std::vector<LikelyBelt> likely_belts(const SurveyEvidence& evidence, Explanation explanation) {
    std::vector<double> logs;
    std::vector<const BeltHypothesis*> belts;
    for (const BeltEvidence& entry : evidence.belt_evidence)
        if (entry.explanation == explanation) {
            belts.push_back(entry.belt);
            logs.push_back(std::log(entry.belt->weight) + entry.on_all);
        }
    std::vector<LikelyBelt> likely;
    double sum = 0;
    const double largest = *std::max_element(logs.begin(), logs.end());
    for (std::size_t k = 0; k < logs.size(); ++k) {
        const double relative = std::exp(logs[k] - largest);
        if (relative < negligible) continue;
        likely.push_back({belts[k], relative});
        sum += relative;
    }
    for (LikelyBelt& belt : likely) belt.probability /= sum;
    return likely;
}

}  // namespace swale
