#include "io/summary_json.h"

#include "tests/io/sample_run.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace swale;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : object.items()) keys.push_back(key);
    return keys;
}

/// The keys of an object begin with those of the contract, in its order.
void check_first_keys(const Json& object, const std::vector<std::string>& contract) {
    std::vector<std::string> keys = keys_of(object);
    REQUIRE(keys.size() >= contract.size());
    keys.resize(contract.size());
    CHECK(keys == contract);
}

const std::vector<std::string> state_keys = {"name",
                                             "status",
                                             "reason",
                                             "tension_N",
                                             "pulley_tension_N",
                                             "far_strain",
                                             "excluded_mm",
                                             "edge_strain_max",
                                             "centre_strain_min",
                                             "edge_tension_max_N_per_mm",
                                             "tension_min_N_per_mm",
                                             "junction_bending_strain_max",
                                             "surface_strain_max",
                                             "wing_line_force_max_N_per_mm",
                                             "supports",
                                             "smallest_tangent_eigenvalue_N_per_mm3"};

Json sample_summary() {
    return Json::parse(summary_json(sample_run()));
}

}  // namespace

TEST_CASE("summary.json: keys of the contract in its order") {
    const Json summary = sample_summary();
    check_first_keys(summary, {"title", "verdict", "states", "criteria", "hand_methods", "cost"});
    for (const Json& state : summary["states"]) check_first_keys(state, state_keys);
    for (const Json& criterion : summary["criteria"])
        check_first_keys(criterion, {"name", "state", "value", "limit", "unit", "utilisation", "passed", "source"});
    check_first_keys(summary["cost"], {"degrees_of_freedom", "newton_iterations", "seconds", "peak_memory_MB"});
    const Json& state = summary["states"][0];
    check_first_keys(state["edge_strain_max"], {"value", "error", "far_end_error", "x_mm", "y_mm"});
    check_first_keys(state["supports"][0], {"name", "x_mm", "force_N", "lift_off_mm"});
    check_first_keys(state["smallest_tangent_eigenvalue_N_per_mm3"], {"symmetric", "antisymmetric"});
}

TEST_CASE("summary.json: numbers read back to the same bits") {
    const RunRecord record = sample_run();
    const Json state = sample_summary()["states"][0];
    CHECK(state["far_strain"].get<double>() == record.result.states[0].far_strain);
    CHECK(state["supports"][2]["force_N"] == Json({3.0, -700.0, 1000.0}));
    CHECK(state["edge_strain_max"]["y_mm"] == -600.0);
    CHECK(state["run_on"]["warp_mm"] == 2.2);
}

TEST_CASE("summary.json: a loaded state has its load and another none") {
    const Json summary = sample_summary(), load = summary["states"][0]["load"];
    CHECK(load["mass_per_length_kg_per_m"] == doctest::Approx(180));
    CHECK(load["weight_N"] == 9532.06);
    CHECK(load["imbalance"] == 1e-7);
    CHECK(summary["states"][1]["load"].is_null());
}

TEST_CASE("summary.json: a state without a solution has its name and reason and nothing else") {
    const Json state = sample_summary()["states"][1];
    CHECK(state["name"] == "starting, \"wet\"");
    CHECK(state["status"] == "not converged");
    CHECK(state["reason"] == "residual 3.1e-4 > 1e-8 after 60 iterations, tension 62 kN");
    for (size_t i = 3; i < state_keys.size(); ++i) CHECK(state[state_keys[i]].is_null());
}

TEST_CASE("summary.json: what is not judged or not defined is null and no number is NaN") {
    const Json summary = sample_summary();
    CHECK(summary["criteria"][3]["passed"].is_null());
    CHECK(summary["criteria"][3]["limit"].is_null());
    CHECK(summary["states"][0]["run_on"]["friction_needed"].is_null());
    CHECK(summary["states"][0]["wing_line_force_max_N_per_mm"].is_null());
    CHECK(summary["states"][0]["centre_strain_min"]["far_end_error"].is_null());
    CHECK(summary["states"][0]["supports"][3]["lift_off_mm"].is_null());
    CHECK(summary["states"][0]["smallest_tangent_eigenvalue_N_per_mm3"]["antisymmetric"].is_null());
    CHECK(summary_json(sample_run()).find("nan") == std::string::npos);
}

TEST_CASE("summary.json: a mode's place, a roll's force and its name") {
    const Json summary = sample_summary(), state = summary["states"][0];
    CHECK(state["wrinkling_mode"]["symmetric"] == Json({{"x_mm", 1600.0}, {"y_mm", 0.0}}));
    CHECK(state["wrinkling_mode"]["antisymmetric"].is_null());
    CHECK(state["supports"][2]["touched_y_mm"] == Json({262.5, 540.0}));
    CHECK(state["supports"][1]["touched_y_mm"].is_null());
    CHECK(state["roll_force_max_N"]["value"] == 1220.655);
    CHECK(summary["criteria"][5]["where"] == "set 1 wing +y");
    CHECK(summary["hand_methods"].front()["validity"].get<std::string>().starts_with("sets of three rolls"));
    CHECK(summary["neutral_lift_mm"].is_null());
}

TEST_CASE("summary.json: only the cost differs between two runs") {
    RunRecord slower = sample_run();
    slower.result.cost.seconds = 9;
    Json one = sample_summary(), other = Json::parse(summary_json(slower));
    CHECK(one != other);
    one.erase("cost");
    other.erase("cost");
    CHECK(one == other);
}
