#include "io/study/study_database.h"

#include "io/case_file.h"
#include "io/input_error.h"
#include "io/sample_table.h"
#include "io/study/record_table.h"
#include "io/study/study_fields.h"
#include "io/version.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <sstream>
#include <utility>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;
constexpr int format_version = 1;

RecordColumn plain(const std::string& name, const std::string& unit) {
    return {name, "/" + name, unit};
}

/// Curves of all cases one behind the other, column by column: they are most of the numbers.
struct CurveTable {
    std::vector<double> cases;
    std::vector<std::string> states;
    std::vector<std::vector<double>> columns = std::vector<std::vector<double>>(along_columns().size());
};

/// The rows of all tables, taken out of the records one by one.
struct Rows {
    std::vector<Json> cases, inputs, states, criteria, hand_methods, supports;
    CurveTable curves;
};

Json tagged(const Json& row, int number) {
    Json result = row;
    result["case"] = number;
    return result;
}

void add_curve(const Json& curve, int number, CurveTable& table) {
    const std::size_t places = curve.at("x_mm").size();
    table.cases.insert(table.cases.end(), places, number);
    table.states.insert(table.states.end(), places, curve.at("state").get<std::string>());
    for (std::size_t k = 0; k < table.columns.size(); ++k)
        for (const Json& value : curve.at(along_columns()[k].name))
            table.columns[k].push_back(value.is_number() ? value.get<double>() : std::numeric_limits<double>::quiet_NaN());
}

void write_curves(const Hdf5Group& root, const CurveTable& table) {
    const Hdf5Group group = root.group("curves");
    group.numbers("case", "1", {table.cases.size()}, table.cases);
    group.texts("state", table.states);
    for (std::size_t k = 0; k < table.columns.size(); ++k)
        group.numbers(along_columns()[k].name, along_columns()[k].unit, {table.cases.size()}, table.columns[k]);
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

// What of the case's geometry a chart needs.
void add_layout(const TransitionLayout& layout, Json& record) {
    record["belt_width_mm"] = layout.belt_width;
    record["distance_mm"] = layout.distance;
    record["lift_mm"] = layout.pulley.lift;
    record["trough_depth_mm"] = layout.trough_depth();
    record["trough_angle_rad"] = layout.trough.angle;
}

// A case that can't be read has none; its row says why.
void add_measures(const Study& study, Json& record) {
    try {
        if (record.at("status") != "bad input")
            add_layout(parse_case(record.at("case_text"), study.case_file.string()).layout, record);
    } catch (const InputErrors&) {
    }
}

Rows rows_of(const StudyPlan& plan, const std::map<int, std::string>& records) {
    Rows rows;
    for (const auto& [number, line] : records) {
        Json record = Json::parse(line);
        rows.inputs.push_back(tagged(inputs_of(record.at("inputs"), plan.study().axes), number));
        if (record.at("summary").is_object()) add_summary(record.at("summary"), number, rows);
        for (const Json& curve : record.at("curves")) add_curve(curve, number, rows.curves);
        record.erase("curves");
        record.erase("fields");
        add_measures(plan.study(), record);
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
            plain("belt_width_mm", "mm"),
            plain("distance_mm", "mm"),
            plain("lift_mm", "mm"),
            plain("trough_depth_mm", "mm"),
            plain("trough_angle_rad", "rad"),
            {"sets", "/summary/sets", "1"},
            {"seconds", "/summary/cost/seconds", "s"},
            {"peak_memory_MB", "/summary/cost/peak_memory_MB", "MB"}};
}

// A slash would make groups.
std::string column_name(std::string axis) {
    std::ranges::replace(axis, '/', '_');
    return axis;
}

std::vector<RecordColumn> input_columns(const std::vector<Axis>& axes) {
    std::vector<RecordColumn> columns{plain("case", "1")};
    const auto pointer = [](const std::string& name) {
        Json::json_pointer place;
        place.push_back(name);
        return place.to_string();
    };
    const auto column = [&](const std::string& name, const char* unit) {
        columns.push_back({column_name(name), pointer(name), unit});
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
    constexpr std::array<Reading, 8> readings{{{"edge_strain_max", "1"},
                                               {"centre_strain_min", "1"},
                                               {"edge_tension_max_N_per_mm", "N/mm"},
                                               {"tension_min_N_per_mm", "N/mm"},
                                               {"junction_bending_strain_max", "1"},
                                               {"surface_strain_max", "1"},
                                               {"wing_line_force_max_N_per_mm", "N/mm"},
                                               {"roll_force_max_N", "N"}}};
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

// The axes' names, and the columns of /inputs that hold their texts.
void write_axes(const Hdf5Group& root, const std::vector<Axis>& axes) {
    std::vector<std::string> names, columns;
    for (const Axis& axis : axes) {
        names.push_back(axis.name);
        columns.push_back(column_name(axis.name));
    }
    root.texts("axes", names);
    root.texts("input_columns", columns);
}

// Case by case: all at once they would not fit into memory.
void write_all_fields(const Hdf5Group& root, const std::map<int, std::string>& records) {
    const Hdf5Group fields = root.group("fields");
    for (const auto& [number, line] : records) {
        const Json record = Json::parse(line);
        if (record.contains("fields")) write_fields(fields, number, record.at("fields"));
    }
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
    write_axes(root, plan.study().axes);
    write_table(root, "cases", case_columns(), rows.cases);
    write_table(root, "inputs", input_columns(plan.study().axes), rows.inputs);
    write_table(root, "states", state_columns(), rows.states);
    write_table(root, "criteria", criterion_columns(), rows.criteria);
    write_table(root, "hand_methods",
                {plain("case", "1"), plain("name", ""), plain("minimum_distance_mm", "mm"), plain("edge_strain", "1"),
                 plain("centre_strain", "1")},
                rows.hand_methods);
    write_table(root, "supports", support_columns(), rows.supports);
    write_curves(root, rows.curves);
    if (plan.study().fields) write_all_fields(root, records);
    return image.bytes();
}

}  // namespace swale
