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

#include <cmath>
#include <string>

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

void add_results(const RunRecord& run, bool fields, Json& record) {
    Json summary = Json::parse(summary_json(run));
    summary.erase("belt");  // its numbers and their origins follow from the case
    record["summary"] = std::move(summary);
    record["curves"] = curves_of(run.result);
    if (fields) record["fields"] = fields_of(run.result);
}

}  // namespace

Json case_record(const PlannedCase& planned, const std::string& name_in_messages, bool fields) {
    Json record = {{"case", planned.number}, {"inputs", planned.labels}, {"case_text", planned.text}, {"status", "solved"},
                   {"reason", ""},           {"summary", nullptr},       {"curves", nullptr}};
    if (!planned.contradiction.empty()) {
        record["status"] = "bad input";
        record["reason"] = planned.contradiction;
        return record;
    }
    try {
        RunRecord run;
        run.case_text = planned.text;
        run.case_file = name_in_messages;
        run.transition = parse_case(run.case_text, run.case_file);
        run.result = solve_transition(run.transition);
        add_results(run, fields, record);
    } catch (const InputErrors& errors) {
        record["status"] = "bad input";
        record["reason"] = errors.what();
    } catch (const std::exception& fault) {
        record["status"] = "fault";
        record["reason"] = fault.what();
    }
    return record;
}

}  // namespace swale
