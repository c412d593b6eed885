#include "io/json_number.h"
#include "io/wear/wear_answer.h"

#include <nlohmann/json.hpp>

#include <numbers>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

const char* key_of(Explanation explanation) {
    constexpr const char* keys[explanations] = {"flat", "cupped", "creased", "creased and cupped", "mistracked", "other"};
    return keys[static_cast<int>(explanation)];
}

const char* verdict_key(const WearDiagnosis& diagnosis) {
    if (!diagnosis.verdict) return "can't tell";
    if (diagnosis.junction_failure) return "junction failure";
    return diagnosis.perhaps_creased ? "cupped, perhaps creased" : key_of(*diagnosis.verdict);
}

Json json_of(const Likelihoods& likelihoods) {
    Json json;
    for (int e = 0; e < explanations; ++e) json[key_of(static_cast<Explanation>(e))] = likelihoods.of[e];
    return json;
}

Json json_of(const Fitted& value, double scale = 1) {
    return {{"mean", json_number(scale * value.mean)},
            {"low", json_number(scale * value.low)},
            {"high", json_number(scale * value.high)}};
}

Json json_of(const RollJudgement& roll) {
    return {{"name", roll.name},
            {"readings", roll.readings},
            {"likelihoods", json_of(roll.alone)},
            {"offset_mm", json_of(roll.offset)},
            {"depth_of_even_pressure_mm", json_number(roll.depth_per_exposure)}};
}

Json json_of(const std::optional<FurtherLook>& look) {
    if (!look) return nullptr;
    return {{"roll", look->roll},
            {"y_mm", look->y},
            {key_of(look->best), json_number(look->first)},
            {key_of(look->rival), json_number(look->second)},
            {"contrast", json_number(look->contrast)}};
}

Json json_of(const std::optional<TransitionAdvice>& advice) {
    if (!advice) return nullptr;
    Json loads = Json::array();
    for (const JunctionLoad& load : advice->loads)
        loads.push_back({{"state", load.state},
                         {"junction_bending_strain", json_number(load.strain)},
                         {"running_trough_strain", json_number(load.trough_strain)},
                         {"wing_line_force_N_per_mm", json_number(load.line_force)}});
    return {{"case", advice->file},
            {"verdict", advice->verdict},
            {"distance_mm", advice->distance},
            {"over_limits", advice->exceeded},
            {"loads", loads},
            {"changed_distance_mm", json_number(advice->changed)},
            {"changed_meets_limits", advice->changed_meets_limits}};
}

}  // namespace

std::string wear_json(const WearReport& report) {
    const WearDiagnosis& diagnosis = report.diagnosis;
    constexpr double degrees = 180 / std::numbers::pi;
    Json rolls = Json::array();
    for (const RollJudgement& roll : diagnosis.rolls) rolls.push_back(json_of(roll));
    const Json answer{{"title", report.file.title},
                      {"verdict", verdict_key(diagnosis)},
                      {"grounds", diagnosis.grounds},
                      {"stated_level", stated_level},
                      {"likelihoods", json_of(diagnosis.likelihoods)},
                      {"cupping_rise_mm", json_of(diagnosis.cupping_rise)},
                      {"crease_angle_deg", json_of(diagnosis.crease_angle, degrees)},
                      {"left_crease", json_number(diagnosis.left_crease)},
                      {"right_crease", json_number(diagnosis.right_crease)},
                      {"stiffness_factor", json_of(diagnosis.stiffness)},
                      {"rolls", rolls},
                      {"rolls_disagree", diagnosis.rolls_disagree},
                      {"disagreement", diagnosis.disagreement},
                      {"further_look", json_of(diagnosis.further)},
                      {"transition", json_of(report.transition)},
                      {"what_follows", what_follows(report)}};
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
