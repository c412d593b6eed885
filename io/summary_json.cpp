#include "io/summary_json.h"

#include "io/data_sheet_json.h"
#include "io/json_number.h"
#include "io/screening_json.h"
#include "io/verdict.h"
#include "io/version.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <numbers>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

Json reading(const Reading& reading) {
    if (!std::isfinite(reading.value)) return nullptr;
    return {{"value", json_number(reading.value)},
            {"error", json_number(reading.error)},
            {"far_end_error", json_number(reading.far_end_error)},
            {"x_mm", json_number(reading.x)},
            {"y_mm", json_number(reading.y)}};
}

Json touched(const SupportForce& support) {
    if (!support.touched) return nullptr;
    return {json_number((*support.touched)[0]), json_number((*support.touched)[1])};
}

Json supports(const std::vector<SupportForce>& forces) {
    Json list = Json::array();
    for (const SupportForce& support : forces) {
        const Eigen::Vector3d& force = support.force;
        list.push_back({{"name", support.name},
                        {"x_mm", json_number(support.x)},
                        {"force_N", {json_number(force.x()), json_number(force.y()), json_number(force.z())}},
                        {"lift_off_mm", json_number(support.lift_off)},
                        {"touched_y_mm", touched(support)},
                        {"force_error_N", json_number(support.force_error)},
                        {"lift_off_error_mm", json_number(support.lift_off_error)}});
    }
    return list;
}

Json newton(const std::vector<NewtonRecord>& records) {
    Json list = Json::array();
    for (const NewtonRecord& record : records)
        list.push_back({{"grid", record.grid},
                        {"unknowns", record.unknowns},
                        {"iterations", record.iterations},
                        {"residual", json_number(record.residual)},
                        {"tolerance", json_number(record.tolerance)}});
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
    return {{"symmetric", json_number(symmetric)}, {"antisymmetric", json_number(antisymmetric)}};
}

/// Where a mode moves most.
Json place(const std::optional<BeltMode>& mode) {
    if (!mode) return nullptr;
    return {{"x_mm", json_number(mode->x)}, {"y_mm", json_number(mode->y)}};
}

Json others(const std::vector<OtherEquilibrium>& equilibria) {
    Json list = Json::array();
    for (const OtherEquilibrium& other : equilibria) {
        Json entry = {{"found", other.start},
                      {"energy_above_J", json_number(other.energy_difference / 1e3)},
                      {"farthest_mm", json_number(other.distance)},
                      {"x_mm", json_number(other.x)},
                      {"y_mm", json_number(other.y)}};
        add_readings(other, entry);
        entry["roll_force_max_N"] = reading(other.roll_force_max);
        entry["smallest_tangent_eigenvalue_N_per_mm3"] =
            eigenvalues(other.eigenvalue_symmetric, other.eigenvalue_antisymmetric);
        list.push_back(entry);
    }
    return list;
}

Json path_row(const TensionPathRow& row) {
    Json entry = {{"tension_N", json_number(row.tension)}, {"converged", row.converged}, {"reason", row.reason}};
    entry["edge_strain_max"] = row.converged ? json_number(row.edge_strain_max.value) : Json(nullptr);
    entry["centre_strain_min"] = row.converged ? json_number(row.centre_strain_min.value) : Json(nullptr);
    entry["smallest_tangent_eigenvalue_N_per_mm3"] = eigenvalues(row.eigenvalue_symmetric, row.eigenvalue_antisymmetric);
    return entry;
}

Json tension_path(const TensionPath& path) {
    if (path.rows.empty()) return nullptr;
    Json rows = Json::array();
    for (const TensionPathRow& row : path.rows) rows.push_back(path_row(row));
    return {{"rows", rows},
            {"symmetric_zero_N", json_number(path.symmetric_zero)},
            {"antisymmetric_zero_N", json_number(path.antisymmetric_zero)}};
}

Json run_on(const std::optional<RunOnLine>& line) {
    if (!line) return nullptr;
    return {{"strain", json_number(line->strain)},
            {"warp_mm", json_number(line->warp)},
            {"friction_needed", json_number(line->friction)},
            {"friction_needed_y_mm", json_number(line->friction_y)},
            {"friction_assumed", json_number(assumed_friction)},
            {"share_beyond_grip", json_number(line->beyond_grip)}};
}

Json bulk(const BulkResult& bulk) {
    return {{"mass_per_length_kg_per_m", json_number(bulk.mass_per_length * 1e6)},
            {"length_mm", json_number(bulk.length)},
            {"weight_N", json_number(bulk.weight)},
            {"steepest_surcharge_deg", json_number(bulk.steepest * 180 / std::numbers::pi)},
            {"imbalance", json_number(bulk.imbalance)}};
}

/// What a state says of itself once it has a solution, in the contract's order.
Json solution(const StateResult& state) {
    Json entry = {{"tension_N", json_number(state.tension)},
                  {"pulley_tension_N", json_number(state.pulley_tension)},
                  {"far_strain", json_number(state.far_strain)},
                  {"excluded_mm", json_number(state.excluded)}};
    add_readings(state, entry);
    entry["supports"] = supports(state.supports);
    entry["smallest_tangent_eigenvalue_N_per_mm3"] = eigenvalues(state.eigenvalue_symmetric, state.eigenvalue_antisymmetric);
    const Eigen::Vector3d& end = state.far_end_force;
    entry["roll_force_max_N"] = reading(state.roll_force_max);
    entry["far_strain_error"] = json_number(state.far_strain_error);
    entry["far_end_force_N"] = {json_number(end.x()), json_number(end.y()), json_number(end.z())};
    entry["load"] = state.bulk ? bulk(*state.bulk) : Json(nullptr);
    entry["other_equilibria"] = others(state.others);
    entry["run_on"] = run_on(state.run_on);
    entry["wrinkling_mode"] = {{"symmetric", place(state.mode_symmetric)}, {"antisymmetric", place(state.mode_antisymmetric)}};
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
            {"value", json_number(judgement.value)},
            {"limit", json_number(judgement.limit)},
            {"unit", judgement.unit},
            {"utilisation", json_number(judgement.utilisation)},
            {"passed", judgement.passed ? Json(*judgement.passed) : Json(nullptr)},
            {"source", judgement.source},
            {"advisory", judgement.advisory},
            {"at_least", judgement.at_least},
            {"error", json_number(judgement.error)},
            {"x_mm", json_number(judgement.x)},
            {"y_mm", json_number(judgement.y)},
            {"where", judgement.where}};
}

Json belt(const Belt& belt) {
    return {{"designation", belt.designation}, {"data", data_sheet_json(belt.data)}, {"warnings", belt.warnings}};
}

Json cost(const Cost& cost) {
    return {{"degrees_of_freedom", cost.degrees_of_freedom},
            {"newton_iterations", cost.newton_iterations},
            {"seconds", json_number(cost.seconds)},
            {"peak_memory_MB", json_number(cost.peak_memory_MB)},
            {"assembly_seconds", json_number(cost.assembly_seconds)},
            {"contact_seconds", json_number(cost.contact_seconds)},
            {"factorisation_seconds", json_number(cost.factorisation_seconds)},
            {"stability_seconds", json_number(cost.stability_seconds)},
            {"recovery_seconds", json_number(cost.recovery_seconds)}};
}

}  // namespace

Json summary_document(const RunRecord& record) {
    const TransitionResult& result = record.result;
    Json summary = {{"title", record.transition.title}, {"verdict", verdict(result)}};
    summary["states"] = Json::array();
    for (const StateResult& entry : result.states) summary["states"].push_back(state(entry));
    summary["criteria"] = Json::array();
    for (const Judgement& judgement : result.criteria) summary["criteria"].push_back(criterion(judgement));
    const Screening screening = screen(record.transition);
    summary["hand_methods"] = hand_methods_json(screening);
    summary["cost"] = cost(result.cost);
    summary["sets"] = result.sets;
    summary["tension_path"] = tension_path(result.path);
    summary["belt"] = belt(record.transition.belt);
    summary["version"] = version();
    summary["hand_methods_beside_shell"] = compare(record.transition, result.states);
    summary["neutral_lift_mm"] = json_number(screening.neutral_lift);
    summary["practice"] = screening.practice;
    return summary;
}

std::string summary_json(const RunRecord& record) {
    return summary_document(record).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace swale
