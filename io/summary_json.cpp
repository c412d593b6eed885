#include "io/summary_json.h"

#include "io/verdict.h"
#include "io/version.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

Json number(double value) {
    return std::isfinite(value) ? Json(value + 0.0) : Json(nullptr);
}

Json number(const std::optional<double>& value) {
    return value ? number(*value) : Json(nullptr);
}

Json reading(const Reading& reading) {
    if (!std::isfinite(reading.value)) return nullptr;
    return {{"value", number(reading.value)},
            {"error", number(reading.error)},
            {"far_end_error", number(reading.far_end_error)},
            {"x_mm", number(reading.x)},
            {"y_mm", number(reading.y)}};
}

Json supports(const std::vector<SupportForce>& forces) {
    Json list = Json::array();
    for (const SupportForce& support : forces) {
        const Eigen::Vector3d& force = support.force;
        list.push_back({{"name", support.name},
                        {"x_mm", number(support.x)},
                        {"force_N", {number(force.x()), number(force.y()), number(force.z())}},
                        {"lift_off_mm", number(support.lift_off)}});
    }
    return list;
}

Json newton(const std::vector<NewtonRecord>& records) {
    Json list = Json::array();
    for (const NewtonRecord& record : records)
        list.push_back({{"grid", record.grid},
                        {"unknowns", record.unknowns},
                        {"iterations", record.iterations},
                        {"residual", number(record.residual)},
                        {"tolerance", number(record.tolerance)}});
    return list;
}

/// What a state says of itself once it has a solution, in the contract's order.
Json solution(const StateResult& state) {
    return {{"tension_N", number(state.tension)},
            {"pulley_tension_N", number(state.pulley_tension)},
            {"far_strain", number(state.far_strain)},
            {"excluded_mm", number(state.excluded)},
            {"edge_strain_max", reading(state.edge_strain_max)},
            {"centre_strain_min", reading(state.centre_strain_min)},
            {"edge_tension_max_N_per_mm", reading(state.edge_tension_max)},
            {"tension_min_N_per_mm", reading(state.tension_min)},
            {"junction_bending_strain_max", reading(state.junction_bending_strain_max)},
            {"surface_strain_max", reading(state.surface_strain_max)},
            {"wing_line_force_max_N_per_mm", reading(state.wing_line_force_max)},
            {"supports", supports(state.supports)},
            {"smallest_tangent_eigenvalue_N_per_mm3",
             {{"symmetric", number(state.eigenvalue_symmetric)}, {"antisymmetric", number(state.eigenvalue_antisymmetric)}}}};
}

Json state(const StateResult& state) {
    Json entry = {{"name", state.name}, {"status", converged(state) ? "converged" : "not converged"}, {"reason", state.reason}};
    const Json values = solution(state);
    for (const auto& [key, value] : values.items()) entry[key] = converged(state) ? value : Json(nullptr);
    entry["notes"] = state.notes;
    entry["newton"] = newton(state.newton);
    return entry;
}

Json criterion(const Judgement& judgement) {
    return {{"name", judgement.name},
            {"state", judgement.state},
            {"value", number(judgement.value)},
            {"limit", number(judgement.limit)},
            {"unit", judgement.unit},
            {"utilisation", number(judgement.utilisation)},
            {"passed", judgement.passed ? Json(*judgement.passed) : Json(nullptr)},
            {"source", judgement.source},
            {"advisory", judgement.advisory},
            {"x_mm", number(judgement.x)},
            {"y_mm", number(judgement.y)}};
}

Json cost(const Cost& cost) {
    return {{"degrees_of_freedom", cost.degrees_of_freedom},
            {"newton_iterations", cost.newton_iterations},
            {"seconds", number(cost.seconds)},
            {"peak_memory_MB", number(cost.peak_memory_MB)},
            {"assembly_seconds", number(cost.assembly_seconds)},
            {"contact_seconds", number(cost.contact_seconds)},
            {"factorisation_seconds", number(cost.factorisation_seconds)},
            {"stability_seconds", number(cost.stability_seconds)},
            {"recovery_seconds", number(cost.recovery_seconds)}};
}

}  // namespace

std::string summary_json(const RunRecord& record) {
    const TransitionResult& result = record.result;
    Json summary = {{"title", record.transition.title}, {"verdict", verdict(result)}};
    summary["states"] = Json::array();
    for (const StateResult& entry : result.states) summary["states"].push_back(state(entry));
    summary["criteria"] = Json::array();
    for (const Judgement& judgement : result.criteria) summary["criteria"].push_back(criterion(judgement));
    summary["hand_methods"] = Json::array();
    summary["cost"] = cost(result.cost);
    summary["sets"] = result.sets;
    summary["version"] = version();
    return summary.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
