#include "benchmarks/campaign/outcome.h"

#include "benchmarks/campaign/balance.h"
#include "benchmarks/campaign/case_text.h"
#include "benchmarks/campaign/kinds.h"
#include "solver/transition.h"
#include "solver/transition/sag.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace swale::benchmark {

namespace {

constexpr double unbalanced = 1e-6;  // Newton stops at 1e-8 of the forces that flow through the belt
constexpr double askew = 1e-6;

bool finite_numbers(const StateResult& state) {
    Readings readings = state;
    const auto finite = [](const Reading* r) { return std::isfinite(r->value) && std::isfinite(r->x) && std::isfinite(r->y); };
    const auto all = readings.all();
    const bool forces =
        std::all_of(state.supports.begin(), state.supports.end(), [](const SupportForce& s) { return s.force.allFinite(); });
    const bool surface = std::all_of(state.surface.points.begin(), state.surface.points.end(), [](const SurfacePoint& p) {
        return p.position.allFinite() && p.force.allFinite() && p.moment.allFinite() && p.top_strain.allFinite();
    });
    return std::all_of(all.begin(), all.end(), finite) && forces && surface && std::isfinite(state.far_strain) &&
           state.shape.control_points.allFinite();
}

bool missing_or_negative(const std::optional<double>& error) {
    return !error || !(*error >= 0);
}

// What a converged state must fulfil; each fault in a word.
std::vector<std::string> faults(const StateResult& state, const Balance& forces, const AxialForce& axial) {
    std::vector<std::string> found;
    if (!finite_numbers(state)) found.push_back("not finite");
    if (!(forces.largest() <= unbalanced)) found.push_back("forces out of balance");
    if (axial.share > askew && !axial.on_rounded_end) found.push_back("roll force along its axis");
    Readings readings = state;
    const auto all = readings.all();
    if (std::any_of(all.begin(), all.end(), [](const Reading* r) { return missing_or_negative(r->error); }))
        found.push_back("no error estimate");
    if (lower_equilibrium(state).value_or(0) < 0) found.push_back("another equilibrium has less energy");
    return found;
}

std::vector<std::string> warnings(const StateResult& state) {
    std::vector<std::string> found;
    for (const std::string& note : state.notes) found.push_back(kind_of_note(note));
    if (!state.edge_strain_max.far_end_error && std::find(found.begin(), found.end(), "no far-end error") == found.end())
        found.push_back("no far-end error and no note");
    return found;
}

void judge_converged(const TransitionCase& transition, const TransitionResult& result, const StateResult& state,
                     Record& record) {
    const Balance forces = balance(transition, state);
    const AxialForce axial = largest_axial_force(transition, state, result.rolls);
    record.along = forces.along;
    record.across = forces.across;
    record.vertical = forces.vertical;
    record.axial = axial.on_rounded_end ? 0 : axial.share;
    record.reason = fmt::format("{}", fmt::join(state.notes, " / "));
    record.kinds = faults(state, forces, axial);
    record.outcome = record.kinds.empty() ? "clean" : "faulty";
    if (!record.kinds.empty()) return;
    record.kinds = warnings(state);
    if (!record.kinds.empty()) record.outcome = "warned";
}

void put_readings(const TransitionCase& transition, const StateResult& state, Record& record) {
    record.edge_strain = state.edge_strain_max.value;
    record.edge_error = state.edge_strain_max.error.value_or(-1);
    record.edge_x = state.edge_strain_max.x / transition.layout.distance;
    record.edge_far_error = state.edge_strain_max.far_end_error.value_or(-1);
    record.tension_min = state.tension_min.value;
    record.eigenvalue_symmetric = state.eigenvalue_symmetric.value_or(0);
    record.eigenvalue_antisymmetric = state.eigenvalue_antisymmetric.value_or(0);
    for (const NewtonRecord& grid : state.newton) {
        record.iterations += grid.iterations;
        record.unknowns = std::max(record.unknowns, grid.unknowns);
    }
}

// Also of a state that did not converge.
void put_tension(const TransitionCase& transition, const TensionState& state, Record& record) {
    record.per_width = state.total.value_or(0) / transition.belt.width;
    record.sag = sag_over_span(transition, state);
}

Record failed(const TransitionCase& transition, const std::string& what) {
    Record record;
    record.outcome = "exception";
    record.kinds = {what.substr(0, 60)};
    record.reason = what;
    record.line = case_line(transition);
    return record;
}

}  // namespace

std::optional<double> lower_equilibrium(const StateResult& state) {
    const auto lowest = std::ranges::min_element(state.others, {}, &OtherEquilibrium::energy_difference);
    if (lowest == state.others.end()) return {};
    return lowest->energy_difference;
}

Record judge_state(const TransitionCase& transition, const TransitionResult& result, const StateResult& state) {
    Record record;
    record.state = state.name;
    record.line = case_line(transition);
    record.sets = result.sets;
    put_readings(transition, state, record);
    if (state.status == SolveStatus::converged) {
        judge_converged(transition, result, state, record);
    } else {
        record.outcome = "not converged";
        record.kinds = {kind_of_reason(state.reason)};
        record.reason = state.reason;
    }
    return record;
}

std::vector<Record> judge_case(const TransitionCase& transition, int index) {
    const auto begin = std::chrono::steady_clock::now();
    std::vector<Record> records;
    try {
        const TransitionResult result = solve_transition(transition);
        for (const StateResult& state : result.states) records.push_back(judge_state(transition, result, state));
        for (std::size_t k = 0; k < records.size(); ++k) put_tension(transition, transition.states[k], records[k]);
    } catch (const std::exception& error) {
        records = {failed(transition, error.what())};
    }
    for (Record& record : records) {
        record.index = index;
        record.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    }
    return records;
}

}  // namespace swale::benchmark
