#include "io/summary_json.h"

#include "io/data_sheet_json.h"
#include "io/screening_json.h"
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

void add_readings(const Readings& r, Json& entry) {
    entry["edge_strain_max"] = reading(r.edge_strain_max);
    entry["centre_strain_min"] = reading(r.centre_strain_min);
    entry["edge_tension_max_N_per_mm"] = reading(r.edge_tension_max);
    entry["tension_min_N_per_mm"] = reading(r.tension_min);
    entry["junction_bending_strain_max"] = reading(r.junction_bending_strain_max);
    entry["surface_strain_max"] = reading(r.surface_strain_max);
    entry["wing_line_force_max_N_per_mm"] = reading(r.wing_line_force_max);
}

Json eigenvalues(const std::optional<double>& symmetric, const std::optional<double>& antisymmetric) {
    return {{"symmetric", number(symmetric)}, {"antisymmetric", number(antisymmetric)}};
}

Json others(const std::vector<OtherEquilibrium>& equilibria) {
    Json list = Json::array();
    for (const OtherEquilibrium& other : equilibria) {
        Json entry = {{"found", other.start},
                      {"energy_above_J", number(other.energy_difference / 1e3)},
                      {"farthest_mm", number(other.distance)},
                      {"x_mm", number(other.x)},
                      {"y_mm", number(other.y)}};
        add_readings(other, entry);
        entry["smallest_tangent_eigenvalue_N_per_mm3"] =
            eigenvalues(other.eigenvalue_symmetric, other.eigenvalue_antisymmetric);
        list.push_back(entry);
    }
    return list;
}

Json path_row(const TensionPathRow& row) {
    Json entry = {{"tension_N", number(row.tension)}, {"converged", row.converged}, {"reason", row.reason}};
    entry["edge_strain_max"] = row.converged ? number(row.edge_strain_max.value) : Json(nullptr);
    entry["centre_strain_min"] = row.converged ? number(row.centre_strain_min.value) : Json(nullptr);
    entry["smallest_tangent_eigenvalue_N_per_mm3"] = eigenvalues(row.eigenvalue_symmetric, row.eigenvalue_antisymmetric);
    return entry;
}

Json tension_path(const TensionPath& path) {
    if (path.rows.empty()) return nullptr;
    Json rows = Json::array();
    for (const TensionPathRow& row : path.rows) rows.push_back(path_row(row));
    return {{"rows", rows},
            {"symmetric_zero_N", number(path.symmetric_zero)},
            {"antisymmetric_zero_N", number(path.antisymmetric_zero)}};
}

/// What a state says of itself once it has a solution, in the contract's order.
Json solution(const StateResult& state) {
    Json entry = {{"tension_N", number(state.tension)},
                  {"pulley_tension_N", number(state.pulley_tension)},
                  {"far_strain", number(state.far_strain)},
                  {"excluded_mm", number(state.excluded)}};
    add_readings(state, entry);
    entry["supports"] = supports(state.supports);
    entry["smallest_tangent_eigenvalue_N_per_mm3"] = eigenvalues(state.eigenvalue_symmetric, state.eigenvalue_antisymmetric);
    const Eigen::Vector3d& end = state.far_end_force;
    entry["far_end_force_N"] = {number(end.x()), number(end.y()), number(end.z())};
    entry["other_equilibria"] = others(state.others);
    return entry;
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
            {"error", number(judgement.error)},
            {"x_mm", number(judgement.x)},
            {"y_mm", number(judgement.y)}};
}

Json belt(const Belt& belt) {
    return {{"designation", belt.designation}, {"data", data_sheet_json(belt.data)}, {"warnings", belt.warnings}};
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
    summary["hand_methods"] = hand_methods_json(screen(record.transition));
    summary["cost"] = cost(result.cost);
    summary["sets"] = result.sets;
    summary["tension_path"] = tension_path(result.path);
    summary["belt"] = belt(record.transition.belt);
    summary["version"] = version();
    return summary.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
