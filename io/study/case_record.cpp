#include "io/study/case_record.h"

#include "io/case_file.h"
#include "io/input_error.h"
#include "io/json_number.h"
#include "io/run_record.h"
#include "io/sample_table.h"
#include "io/summary_json.h"
#include "io/surface_fields.h"
#include "io/verdict.h"
#include "solver/transition.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <utility>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

// Seven digits: half the room, and more than the solution has.
Json short_number(double value) {
    return json_number(std::isfinite(value) ? std::stod(fmt::format("{:.7g}", value)) : value);
}

Json curves_of(const TransitionResult& result) {
    Json curves = Json::array();
    for (const StateResult& state : result.states) {
        Json entry = {{"state", state.name}};
        for (const Column<AlongRow>& column : along_columns()) {
            Json values = Json::array();
            for (const AlongRow& row : state.along) values.push_back(short_number(column.value(row)));
            entry[column.name] = std::move(values);
        }
        curves.push_back(std::move(entry));
    }
    return curves;
}

Json numbers_of(const SurfaceField& field, const BeltSurface& surface) {
    Json values = Json::array();
    for (const SurfacePoint& point : surface.points)
        for (int i = 0; i < field.size(); ++i) values.push_back(short_number(field.value(point, i)));
    return values;
}

Json fields_of(const TransitionResult& result) {
    Json fields = Json::array();
    for (const StateResult& state : result.states) {
        if (!converged(state)) continue;
        Json entry = {{"state", state.name}, {"along", state.surface.along}, {"across", state.surface.across}};
        for (const SurfaceField& field : surface_fields()) entry["values"][field.name] = numbers_of(field, state.surface);
        fields.push_back(std::move(entry));
    }
    return fields;
}

// Why the first state that has no solution has none.
std::string why_unsolved(const TransitionResult& result) {
    for (const StateResult& state : result.states)
        if (!converged(state)) return fmt::format("\"{}\": {}", state.name, state.reason);
    return "";
}

void add_results(const RunRecord& run, bool fields, Json& record) {
    record["reason"] = why_unsolved(run.result);
    Json summary = summary_document(run);
    summary.erase("belt");  // its numbers and their origins follow from the case
    record["summary"] = std::move(summary);
    record["curves"] = curves_of(run.result);
    if (fields) record["fields"] = fields_of(run.result);
}

/// A case on its way to its record: with a run if it could be read.
struct ReadCase {
    Json record;
    std::optional<RunRecord> run = {};
};

void reject(const std::string& status, const std::string& reason, Json& record) {
    record["status"] = status;
    record["reason"] = reason;
}

ReadCase read_planned(const PlannedCase& planned, const std::string& case_file) {
    ReadCase read{{{"case", planned.number},
                   {"inputs", planned.labels},
                   {"case_text", planned.text},
                   {"status", "solved"},
                   {"reason", ""},
                   {"summary", nullptr},
                   {"curves", nullptr}}};
    if (!planned.contradiction.empty()) {
        reject("bad input", planned.contradiction, read.record);
        return read;
    }
    try {
        const std::string name = fmt::format("{} as case {}", case_file, planned.number);
        read.run = RunRecord{parse_case(planned.text, name), {}, planned.text, name};
    } catch (const InputErrors& errors) {
        reject("bad input", errors.what(), read.record);
    } catch (const std::exception& fault) {
        reject("fault", fault.what(), read.record);
    }
    return read;
}

void solve_alone(RunRecord& run, Json& record) {
    try {
        run.result = solve_transition(run.transition);
    } catch (const std::exception& fault) {
        reject("fault", fault.what(), record);
    }
}

void tell_results(const RunRecord& run, bool fields, Json& record) {
    try {
        add_results(run, fields, record);
    } catch (const std::exception& fault) {
        reject("fault", fault.what(), record);
    }
}

double pull_of(const ReadCase* read) {
    const TensionState& state = read->run->transition.states.front();
    return state.total ? *state.total : state.elongation.value_or(0);
}

// The highest tension first, where a belt lies best.
std::vector<ReadCase*> falling(std::vector<ReadCase>& cases) {
    std::vector<ReadCase*> chain;
    for (ReadCase& read : cases)
        if (read.run) chain.push_back(&read);
    std::ranges::stable_sort(chain, std::greater(), pull_of);
    return chain;
}

// A path of tensions is solved by itself, and so is a case in which another axis put more states.
bool may_be_carried(const ReadCase* read) {
    const TransitionCase& transition = read->run->transition;
    return transition.states.size() == 1 && transition.settings.tension_path == 0;
}

// One after the other, each from the one before; a fault is told of the case that has it.
void solve_chain(const std::vector<ReadCase*>& chain) {
    try {
        TransitionCase all = chain.front()->run->transition;
        all.states.clear();
        for (const ReadCase* read : chain) all.states.push_back(read->run->transition.states.front());
        std::vector<TransitionResult> results = solve_tensions(all);
        for (std::size_t k = 0; k < chain.size(); ++k) chain[k]->run->result = std::move(results[k]);
    } catch (const std::exception&) {
        for (ReadCase* read : chain) solve_alone(*read->run, read->record);
    }
}

}  // namespace

std::vector<Json> case_records(const std::vector<PlannedCase>& alike, const std::string& case_file, bool fields) {
    std::vector<ReadCase> cases;
    for (const PlannedCase& planned : alike) cases.push_back(read_planned(planned, case_file));
    const std::vector<ReadCase*> chain = falling(cases);
    const bool carried = chain.size() > 1 && std::ranges::all_of(chain, may_be_carried);
    if (carried) solve_chain(chain);
    for (ReadCase* read : chain)
        if (!carried) solve_alone(*read->run, read->record);
    std::vector<Json> records;
    for (ReadCase& read : cases) {
        if (read.run && read.record["status"] == "solved") tell_results(*read.run, fields, read.record);
        records.push_back(std::move(read.record));
    }
    return records;
}

}  // namespace swale
