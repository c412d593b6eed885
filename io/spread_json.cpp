#include "io/spread_json.h"

#include "io/json_number.h"

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

Json criterion_json(const CriterionSpread& one) {
    Json parts = Json::array();
    for (const CriterionSpread::Part& part : one.parts) parts.push_back({{"parameter", part.parameter}, {"share", part.share}});
    return {{"name", one.criterion},
            {"state", one.state},
            {"value", json_number(one.value)},
            {"limit", json_number(one.limit)},
            {"unit", one.unit},
            {"headroom", json_number(one.headroom)},
            {"standard_deviation", json_number(one.deviation)},
            {"headroom_standard_deviation", json_number(one.headroom_deviation)},
            {"exceeds", json_number(one.exceeds)},
            {"sampled_standard_deviation", json_number(one.sampled_deviation)},
            {"sampled_exceeds", json_number(one.sampled_exceeds)},
            {"variance_from", parts}};
}

}  // namespace

std::string spread_json(const ToleranceSpread& spread, const Tolerances& tolerances, const std::string& title) {
    Json criteria = Json::array();
    for (const CriterionSpread& one : spread.criteria) criteria.push_back(criterion_json(one));
    const Json answer{{"title", title},
                      {"why_none", spread.why_none},
                      {"wanted_exceeds", tolerances.exceed},
                      {"any_exceeds", json_number(spread.any_exceeds)},
                      {"sampled_any_exceeds", json_number(spread.sampled_any_exceeds)},
                      {"samples", spread.samples},
                      {"samples_without_solution", spread.samples_without},
                      {"distance_mm", json_number(spread.distance)},
                      {"criteria", criteria}};
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
