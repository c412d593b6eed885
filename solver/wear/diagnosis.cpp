#include "solver/wear/diagnosis.h"

#include "solver/wear/predictions.h"
#include "solver/wear/survey_evidence.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr double speaks_clearly = 0.8;  // of a roll alone: it is sure of an explanation
constexpr double least_agreement = -3;  // ln: one belt on all rolls is twenty times less likely than a belt each

bool is_junction_failure(Explanation e) {
    return e == Explanation::creased || e == Explanation::both;
}

// Explanations that say the same of the belt: where it runs may change from roll to roll.
int belt_of(Explanation e) {
    if (e == Explanation::mistracked) return static_cast<int>(Explanation::flat);
    return static_cast<int>(e == Explanation::both ? Explanation::creased : e);
}

// The best explanation but those that say the same of the belt, and but none of these.
Explanation rival_of(const Likelihoods& likelihoods, Explanation best) {
    Explanation rival = Explanation::other;
    double most = -1;
    for (int e = 0; e < explanations - 1; ++e) {
        const auto explanation = static_cast<Explanation>(e);
        const bool same = explanation == best || (is_junction_failure(explanation) && is_junction_failure(best));
        if (!same && likelihoods[explanation] > most) rival = explanation, most = likelihoods[explanation];
    }
    return rival;
}

Explanation best_belt(const Likelihoods& likelihoods) {
    Explanation best = Explanation::flat;
    for (int e = 0; e < explanations - 1; ++e)
        if (likelihoods.of[e] > likelihoods[best]) best = static_cast<Explanation>(e);
    return best;
}

std::string likelihood_text(double likelihood) {
    return likelihood > 0.999 ? "above 0.999" : fmt::format("{:.3f}", likelihood);
}

// A stiff belt that is cupped stands on its edges, whether it is creased too or not: then its wear tells of the cupping only.
void give_verdict(Explanation best, WearDiagnosis& diagnosis) {
    const Likelihoods& likelihoods = diagnosis.likelihoods;
    diagnosis.verdict = best;
    diagnosis.junction_failure = likelihoods.any_crease() >= stated_level;
    diagnosis.cupping = likelihoods.any_cupping() >= stated_level;
    diagnosis.perhaps_creased =
        diagnosis.cupping && !diagnosis.junction_failure && likelihoods[Explanation::cupped] < stated_level;
    if (diagnosis.junction_failure)
        diagnosis.grounds = "creased, with or without cupping, has the likelihood " + likelihood_text(likelihoods.any_crease());
    else if (diagnosis.perhaps_creased)
        diagnosis.grounds = "cupped, with or without creases, has the likelihood " +
                            likelihood_text(likelihoods.any_cupping()) +
                            "; whether it is creased too can't be told: " + likelihood_text(likelihoods.any_crease());
    else
        diagnosis.grounds = name_of(best) + " has the likelihood " + likelihood_text(likelihoods[best]);
}

std::string undecided(const Likelihoods& likelihoods) {
    const Explanation best = likelihoods.best(), second = likelihoods.second();
    const double bent = likelihoods.any_cupping() + likelihoods[Explanation::creased];
    return fmt::format("{} has {:.2f}, {} {:.2f}; a verdict needs {:.2f}", name_of(best), likelihoods[best], name_of(second),
                       likelihoods[second], stated_level) +
           (bent < stated_level ? "" : "; that it is cupped or creased at all has " + likelihood_text(bent));
}

void judge(const WearSurvey& survey, double agreement, WearDiagnosis& diagnosis) {
    int readings = 0;
    for (const SurveyedRoll& roll : survey.rolls) readings += informative_readings(roll);
    const Explanation best = diagnosis.likelihoods.best();
    const double most =
        std::max({diagnosis.likelihoods[best], diagnosis.likelihoods.any_crease(), diagnosis.likelihoods.any_cupping()});
    if (readings < fewest_readings)
        diagnosis.grounds = fmt::format("{} readings say something; a pattern needs {} or more", readings, fewest_readings);
    else if (survey.rolls.size() > 1 && agreement < least_agreement)
        diagnosis.grounds = "no one belt explains all rolls: a belt of its own for each is more likely by a factor of " +
                            fmt::format("{:.2g}", std::exp(std::min(60.0, -agreement)));
    else if (best == Explanation::other)
        diagnosis.grounds = fmt::format("the readings have the pattern of no belt on a roll (likelihood {:.2f})", most);
    else if (most < stated_level)
        diagnosis.grounds = undecided(diagnosis.likelihoods);
    else
        give_verdict(best, diagnosis);
}

Fitted widened(const Fitted& fitted) {
    const auto scaled = [](double value, bool out) { return out ? value * half_a_point : value / half_a_point; };
    return {fitted.mean, scaled(fitted.low, fitted.low < 0), scaled(fitted.high, fitted.high > 0)};
}

// Under cupped or creased alone if one of them is best, or both together.
void fit_belt(const WearSurvey& survey, const SurveyEvidence& evidence, WearDiagnosis& diagnosis) {
    const Explanation favoured = best_belt(diagnosis.likelihoods);
    const Explanation cupped = favoured == Explanation::both ? favoured : Explanation::cupped;
    const Explanation creased = favoured == Explanation::both ? favoured : Explanation::creased;
    std::vector<std::pair<double, double>> rise, angle, stiffness;
    for (const LikelyBelt& likely : likely_belts(evidence, cupped))
        rise.emplace_back(likely.belt->cupping * survey.run.width, likely.probability);
    for (const LikelyBelt& likely : likely_belts(evidence, creased)) {
        const double left = likely.belt->left_crease, right = likely.belt->right_crease;
        angle.emplace_back(std::max(left, right), likely.probability);
        if (left > 0) diagnosis.left_crease += likely.probability;
        if (right > 0) diagnosis.right_crease += likely.probability;
    }
    for (const LikelyBelt& likely : likely_belts(evidence, favoured))
        stiffness.emplace_back(likely.belt->stiffness, likely.probability);
    diagnosis.cupping_rise = widened(fitted(rise));
    diagnosis.crease_angle = widened(fitted(angle));
    diagnosis.stiffness = fitted(stiffness);
}

RollJudgement judge_roll(const WearSurvey& survey, const SurveyEvidence& evidence, int roll, Explanation favoured) {
    RollJudgement judgement;
    judgement.name = survey.rolls[roll].name;
    judgement.readings = informative_readings(survey.rolls[roll]);
    judgement.alone = likelihoods_alone(evidence, roll);
    for (int e = 0; e < explanations; ++e) {
        RollPrediction prediction = predict(survey, evidence, roll, static_cast<Explanation>(e));
        if (static_cast<Explanation>(e) == favoured) {
            judgement.offset = prediction.offset;
            judgement.depth_per_exposure = prediction.depth_per_exposure;
        }
        judgement.predictions.push_back(std::move(prediction.exposure));
    }
    return judgement;
}

void compare_rolls(double agreement, WearDiagnosis& diagnosis) {
    std::string clear;
    const RollJudgement* first = nullptr;
    for (const RollJudgement& roll : diagnosis.rolls) {
        const Explanation best = roll.alone.best();
        if (best == Explanation::other || roll.alone[best] < speaks_clearly) continue;
        if (first && belt_of(best) != belt_of(first->alone.best())) diagnosis.rolls_disagree = true;
        if (!first) first = &roll;
        clear += fmt::format("{}{}: {} ({:.2f})", clear.empty() ? "" : "; ", roll.name, name_of(best), roll.alone[best]);
    }
    if (diagnosis.rolls.size() > 1 && agreement < least_agreement) diagnosis.rolls_disagree = true;
    if (diagnosis.rolls_disagree) diagnosis.disagreement = clear.empty() ? "no roll alone is sure of anything" : clear;
}

}  // namespace

ShapeTable shapes_of(const WearSurvey& survey) {
    return ShapeTable(survey.run, usual_nodes(survey.stiffness_low, survey.stiffness_high), survey.carrying_side_down ? -1 : 1);
}

WearDiagnosis diagnose(const WearSurvey& survey, const ShapeTable& table) {
    const SurveyEvidence evidence = survey_evidence(survey, table);
    WearDiagnosis diagnosis;
    diagnosis.likelihoods = likelihoods(evidence);
    const double agreement = agreement_of_rolls(evidence);
    judge(survey, agreement, diagnosis);
    fit_belt(survey, evidence, diagnosis);
    const Explanation favoured = best_belt(diagnosis.likelihoods);
    for (std::size_t roll = 0; roll < survey.rolls.size(); ++roll)
        diagnosis.rolls.push_back(judge_roll(survey, evidence, static_cast<int>(roll), favoured));
    compare_rolls(agreement, diagnosis);
    diagnosis.further = further_look(survey, diagnosis.rolls, favoured, rival_of(diagnosis.likelihoods, favoured));
    diagnosis.solved = table.solved();
    diagnosis.failures = table.failures();
    return diagnosis;
}

WearDiagnosis diagnose(const WearSurvey& survey) {
    return diagnose(survey, shapes_of(survey));
}

}  // namespace swale
