#include "io/ranges_json.h"

#include "io/json_number.h"
#include "io/version.h"

#include <array>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

// The names of summary.json, in the order of the studied quantities.
constexpr std::array<const char*, studied_quantities> keys{"edge_strain_max", "centre_strain_min", "edge_tension_max_N_per_mm",
                                                           "tension_min_N_per_mm", "junction_bending_strain_max"};

Json state_json(const StudiedState& state) {
    Json json{{"name", state.name}, {"status", state.readings ? "converged" : "not converged"}, {"reason", state.reason}};
    for (int q = 0; state.readings && q < studied_quantities; ++q) {
        const Reading& reading = *state.readings.*all_studied_quantities()[q].reading;
        json[keys[q]] = {{"value", json_number(reading.value)},
                         {"error", json_number(reading.error)},
                         {"far_end_error", json_number(reading.far_end_error)}};
    }
    return json;
}

Json run_json(const StudiedRun& run) {
    Json states = Json::array();
    for (const StudiedState& state : run.states) states.push_back(state_json(state));
    return {{"states", states}, {"exceeded", run.exceeded}};
}

Json effects_json(const StudiedDatum& datum) {
    Json effects = Json::object();
    for (int q = 0; q < studied_quantities; ++q) {
        const RangeEffect& effect = datum.effects[q];
        effects[keys[q]] = {{"swing", json_number(effect.swing)},
                            {"state", effect.state},
                            {"low", json_number(effect.low)},
                            {"as_given", json_number(effect.as_given)},
                            {"high", json_number(effect.high)}};
    }
    return effects;
}

Json datum_json(const StudiedDatum& studied) {
    const BeltDatum& datum = studied.datum;
    return {{"name", datum.name},
            {"unit", datum.unit},
            {"value", datum.value},
            {"low", datum.range->low},
            {"high", datum.range->high},
            {"range_source", datum.range->source},
            {"effects", effects_json(studied)},
            {"at_low", run_json(studied.low)},
            {"at_high", run_json(studied.high)}};
}

}  // namespace

std::string ranges_json(const TransitionCase& transition, const RangeStudy& study) {
    Json data = Json::array();
    for (const StudiedDatum& datum : study.data) data.push_back(datum_json(datum));
    const Json answer{
        {"version", version()}, {"title", transition.title}, {"as_given", run_json(study.as_given)}, {"data", data}};
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
