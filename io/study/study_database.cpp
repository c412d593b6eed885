#include "io/study/study_database.h"

#include "io/sample_table.h"
#include "io/study/record_table.h"
#include "io/version.h"

#include <fmt/format.h>

#include <array>
#include <sstream>
#include <utility>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;
constexpr int format_version = 1;

RecordColumn plain(const std::string& name, const std::string& unit) {
    return {name, "/" + name, unit};
}

/// The rows of all tables, taken out of the records one by one.
struct Rows {
    std::vector<Json> cases, inputs, states, criteria, hand_methods, supports, curves;
};

Json tagged(const Json& row, int number) {
    Json result = row;
    result["case"] = number;
    return result;
}

// A curve is a table of its own, column by column: a row a place.
void add_curve(const Json& curve, int number, std::vector<Json>& rows) {
    for (std::size_t k = 0; k < curve.at("x_mm").size(); ++k) {
        Json row = {{"case", number}, {"state", curve.at("state")}};
        for (const Column<AlongRow>& column : along_columns()) row[column.name] = curve.at(column.name).at(k);
        rows.push_back(std::move(row));
    }
}

void add_summary(const Json& summary, int number, Rows& rows) {
    for (const Json& state : summary.at("states")) {
        rows.states.push_back(tagged(state, number));
        if (!state.at("supports").is_array()) continue;
        for (const Json& support : state.at("supports")) {
            rows.supports.push_back(tagged(support, number));
            rows.supports.back()["state"] = state.at("name");
        }
    }
    for (const Json& judgement : summary.at("criteria")) rows.criteria.push_back(tagged(judgement, number));
    for (const Json& method : summary.at("hand_methods")) rows.hand_methods.push_back(tagged(method, number));
}

Json inputs_of(const Json& labels, const std::vector<Axis>& axes) {
    Json row;
    for (std::size_t k = 0; k < axes.size(); ++k) {
        row[axes[k].name] = labels.at(k);
        std::istringstream stream(labels.at(k).get<std::string>());
        double number = 0;
        if (stream >> number) row[axes[k].name + "_number"] = number;
    }
    return row;
}

Rows rows_of(const StudyPlan& plan, const std::map<int, std::string>& records) {
    Rows rows;
    for (const auto& [number, line] : records) {
        Json record = Json::parse(line);
        rows.inputs.push_back(tagged(inputs_of(record.at("inputs"), plan.study().axes), number));
        if (record.at("summary").is_object()) add_summary(record.at("summary"), number, rows);
        for (const Json& curve : record.at("curves")) add_curve(curve, number, rows.curves);
        record.erase("curves");
        rows.cases.push_back(std::move(record));
    }
    return rows;
}

std::vector<RecordColumn> case_columns() {
    return {plain("case", "1"),
            plain("status", ""),
            {"verdict", "/summary/verdict", ""},
            plain("reason", ""),
            plain("case_text", ""),
            {"sets", "/summary/sets", "1"},
            {"seconds", "/summary/cost/seconds", "s"},
            {"peak_memory_MB", "/summary/cost/peak_memory_MB", "MB"}};
}

std::vector<RecordColumn> input_columns(const std::vector<Axis>& axes) {
    std::vector<RecordColumn> columns{plain("case", "1")};
    const auto pointer = [](const std::string& name) {
        Json::json_pointer place;
        place.push_back(name);
        return place.to_string();
    };
    const auto column = [&](const std::string& name, const char* unit) {
        std::string shown = name;  // a slash would make groups
        for (char& c : shown)
            if (c == '/') c = '_';
        columns.push_back({shown, pointer(name), unit});
    };
    for (const Axis& axis : axes) {
        column(axis.name, "");
        column(axis.name + "_number", "as in the text");
    }
    return columns;
}

std::vector<RecordColumn> state_columns() {
    std::vector<RecordColumn> columns{plain("case", "1"),       {"state", "/name", ""},    plain("status", ""),
                                      plain("reason", ""),      plain("tension_N", "N"),   plain("pulley_tension_N", "N"),
                                      plain("far_strain", "1"), plain("excluded_mm", "mm")};
    using Reading = std::pair<const char*, const char*>;
    constexpr std::array<Reading, 7> readings{{{"edge_strain_max", "1"},
                                               {"centre_strain_min", "1"},
                                               {"edge_tension_max_N_per_mm", "N/mm"},
                                               {"tension_min_N_per_mm", "N/mm"},
                                               {"junction_bending_strain_max", "1"},
                                               {"surface_strain_max", "1"},
                                               {"wing_line_force_max_N_per_mm", "N/mm"}}};
    for (const auto& [name, unit] : readings) {
        const std::string at = std::string("/") + name;
        columns.push_back({name, at + "/value", unit});
        columns.push_back({std::string(name) + "_error", at + "/error", unit});
        columns.push_back({std::string(name) + "_far_end_error", at + "/far_end_error", unit});
        columns.push_back({std::string(name) + "_x_mm", at + "/x_mm", "mm"});
        columns.push_back({std::string(name) + "_y_mm", at + "/y_mm", "mm"});
    }
    for (const char* parity : {"symmetric", "antisymmetric"})
        columns.push_back({std::string("eigenvalue_") + parity + "_N_per_mm3",
                           std::string("/smallest_tangent_eigenvalue_N_per_mm3/") + parity, "N/mm^3"});
    return columns;
}

std::vector<RecordColumn> criterion_columns() {
    return {plain("case", "1"),
            plain("state", ""),
            plain("name", ""),
            plain("value", "see column unit"),
            plain("limit", "see column unit"),
            plain("unit", ""),
            plain("utilisation", "1"),
            plain("passed", "1"),
            plain("advisory", "1"),
            plain("error", "see column unit"),
            plain("x_mm", "mm"),
            plain("y_mm", "mm"),
            plain("source", "")};
}

std::vector<RecordColumn> support_columns() {
    return {plain("case", "1"),
            plain("state", ""),
            plain("name", ""),
            plain("x_mm", "mm"),
            {"force_x_N", "/force_N/0", "N"},
            {"force_y_N", "/force_N/1", "N"},
            {"force_z_N", "/force_N/2", "N"},
            plain("lift_off_mm", "mm")};
}

std::vector<RecordColumn> curve_columns() {
    std::vector<RecordColumn> columns{plain("case", "1"), plain("state", "")};
    for (const Column<AlongRow>& column : along_columns()) columns.push_back(plain(column.name, column.unit));
    return columns;
}

}  // namespace

std::string study_database(const StudyPlan& plan, const std::map<int, std::string>& records,
                           const std::filesystem::path& path) {
    const Hdf5Image image(path);
    const Hdf5Group root = image.root();
    const Rows rows = rows_of(plan, records);
    root.attribute("format", std::string("swale study"));
    root.attribute("format_version", format_version);
    root.attribute("swale_version", version());
    root.attribute("title", plan.study().title);
    root.attribute("cases", plan.size());
    root.attribute("rows", static_cast<int>(records.size()));
    root.text("study_text", plan.study().text);
    root.text("case_text", plan.study().case_text);
    write_table(root, "cases", case_columns(), rows.cases);
    write_table(root, "inputs", input_columns(plan.study().axes), rows.inputs);
    write_table(root, "states", state_columns(), rows.states);
    write_table(root, "criteria", criterion_columns(), rows.criteria);
    write_table(root, "hand_methods",
                {plain("case", "1"), plain("name", ""), plain("minimum_distance_mm", "mm"), plain("edge_strain", "1"),
                 plain("centre_strain", "1")},
                rows.hand_methods);
    write_table(root, "supports", support_columns(), rows.supports);
    write_table(root, "curves", curve_columns(), rows.curves);
    return image.bytes();
}

}  // namespace swale
