#include "io/stored_summary.h"

#include "io/file_error.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>

namespace swale {

namespace {

using Json = nlohmann::json;

std::optional<double> optional_number(const Json& value) {
    return value.is_null() ? std::nullopt : std::optional(value.get<double>());
}

double number(const Json& value) {
    return value.is_null() ? std::nan("") : value.get<double>();
}

Reading reading(const Json& entry) {
    if (entry.is_null()) return {std::nan(""), {}, {}, 0, 0};
    return {number(entry.at("value")), optional_number(entry.at("error")), optional_number(entry.at("far_end_error")),
            number(entry.at("x_mm")), number(entry.at("y_mm"))};
}

void read_readings(const Json& entry, Readings& readings) {
    readings.edge_strain_max = reading(entry.at("edge_strain_max"));
    readings.centre_strain_min = reading(entry.at("centre_strain_min"));
    readings.edge_tension_max = reading(entry.at("edge_tension_max_N_per_mm"));
    readings.tension_min = reading(entry.at("tension_min_N_per_mm"));
    readings.junction_bending_strain_max = reading(entry.at("junction_bending_strain_max"));
    readings.surface_strain_max = reading(entry.at("surface_strain_max"));
    readings.wing_line_force_max = reading(entry.at("wing_line_force_max_N_per_mm"));
    readings.roll_force_max = reading(entry.at("roll_force_max_N"));
}

std::vector<SupportForce> supports(const Json& list) {
    std::vector<SupportForce> forces;
    for (const Json& entry : list) {
        const Json& force = entry.at("force_N");
        forces.push_back({entry.at("name"),
                          number(entry.at("x_mm")),
                          {number(force.at(0)), number(force.at(1)), number(force.at(2))},
                          optional_number(entry.at("lift_off_mm"))});
    }
    return forces;
}

std::vector<OtherEquilibrium> others(const Json& list) {
    std::vector<OtherEquilibrium> equilibria;
    for (const Json& entry : list) {
        OtherEquilibrium other;
        read_readings(entry, other);
        other.start = entry.at("found");
        other.energy_difference = number(entry.at("energy_above_J")) * 1e3;
        other.distance = number(entry.at("farthest_mm"));
        equilibria.push_back(other);
    }
    return equilibria;
}

void read_solution(const Json& entry, StateResult& state) {
    state.status = SolveStatus::converged;
    state.tension = number(entry.at("tension_N"));
    state.pulley_tension = number(entry.at("pulley_tension_N"));
    state.far_strain = number(entry.at("far_strain"));
    state.excluded = number(entry.at("excluded_mm"));
    read_readings(entry, state);
    state.supports = supports(entry.at("supports"));
    state.others = others(entry.at("other_equilibria"));
}

StateResult state(const Json& entry) {
    StateResult state;
    state.name = entry.at("name");
    state.reason = entry.at("reason");
    if (entry.at("status") == "converged") read_solution(entry, state);
    state.notes = entry.at("notes").get<std::vector<std::string>>();
    for (const Json& grid : entry.at("newton"))
        state.newton.push_back({grid.at("grid"), grid.at("unknowns"), grid.at("iterations"), number(grid.at("residual")),
                                number(grid.at("tolerance"))});
    return state;
}

TensionPath tension_path(const Json& entry) {
    TensionPath path;
    if (entry.is_null()) return path;
    for (const Json& at : entry.at("rows")) {
        TensionPathRow& row = path.rows.emplace_back();
        row.tension = number(at.at("tension_N"));
        row.converged = at.at("converged");
        row.reason = at.at("reason");
        row.edge_strain_max.value = number(at.at("edge_strain_max"));
        row.centre_strain_min.value = number(at.at("centre_strain_min"));
        const Json& lowest = at.at("smallest_tangent_eigenvalue_N_per_mm3");
        row.eigenvalue_symmetric = optional_number(lowest.at("symmetric"));
        row.eigenvalue_antisymmetric = optional_number(lowest.at("antisymmetric"));
    }
    path.symmetric_zero = optional_number(entry.at("symmetric_zero_N"));
    path.antisymmetric_zero = optional_number(entry.at("antisymmetric_zero_N"));
    return path;
}

Judgement judgement(const Json& entry) {
    Judgement judgement{entry.at("name"),
                        entry.at("state"),
                        optional_number(entry.at("value")),
                        optional_number(entry.at("limit")),
                        entry.at("unit"),
                        optional_number(entry.at("utilisation")),
                        {},
                        entry.at("advisory"),
                        entry.at("source"),
                        optional_number(entry.at("x_mm")),
                        optional_number(entry.at("y_mm")),
                        optional_number(entry.at("error"))};
    if (!entry.at("passed").is_null()) judgement.passed = entry.at("passed").get<bool>();
    judgement.at_least = entry.at("at_least");
    judgement.where = entry.at("where");
    return judgement;
}

}  // namespace

StoredSummary read_summary(const std::filesystem::path& path) {
    std::ifstream file(path);
    if (!file) throw FileError(path, "can't be read");
    try {
        const Json summary = Json::parse(file);
        StoredSummary stored{{}, summary.at("version")};
        for (const Json& entry : summary.at("states")) stored.result.states.push_back(state(entry));
        for (const Json& entry : summary.at("criteria")) stored.result.criteria.push_back(judgement(entry));
        stored.result.sets = summary.at("sets");
        stored.result.path = tension_path(summary.at("tension_path"));
        return stored;
    } catch (const Json::exception& error) {
        throw FileError(path, std::string("is no summary of this program's: ") + error.what());
    }
}

}  // namespace swale
