#include "io/study/study_file.h"

#include "io/case_table.h"
#include "io/text_file.h"
#include "io/toml_document.h"
#include "io/toml_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <sstream>
#include <stdexcept>

namespace swale {

namespace {

using Type = TomlNode::Type;
constexpr int most_cases = 1000000, most_steps = 1000;

std::string label_of(const TomlNode& value) {
    return value.type == Type::text ? value.text : toml_value(value);
}

/// "1200 mm", 0.3 as number and unit.
struct Bound {
    double number = 0;
    std::string unit;
};

std::optional<Bound> bound_of(const TomlNode& value) {
    if (value.type == Type::integer || value.type == Type::real) return Bound{value.number, ""};
    if (value.type != Type::text) return {};
    std::istringstream stream(value.text);
    Bound bound;
    if (!(stream >> bound.number)) return {};
    std::getline(stream >> std::ws, bound.unit);
    return bound;
}

// key with values = [...]
void read_list(CaseTable& table, const TomlNode& values, Axis& axis) {
    if (values.type != Type::array || values.items.empty())
        return table.reject("values", "wrong type", "a list of at least one value");
    for (const TomlNode& item : values.items) axis.choices.push_back({label_of(item), {{axis.key, item}}});
}

// key with from, to and, for a grid, steps
void read_range(CaseTable& table, bool sampled, Axis& axis) {
    const TomlNode *from = table.value("from"), *to = table.value("to");
    const std::optional<int> steps = table.integer("steps", 2, most_steps);
    if (!from || !to) return table.reject_missing(from ? "to" : "from", "values = [...], or from and to");
    const std::optional<Bound> low = bound_of(*from), high = bound_of(*to);
    if (!low || !high || low->unit != high->unit)
        return table.reject(low ? "to" : "from", "from and to must be numbers of one unit",
                            "from = \"1200 mm\", to = \"3600 mm\"");
    axis.is_range = sampled;
    axis.low = low->number;
    axis.high = high->number;
    axis.unit = low->unit;
    if (sampled) return;
    if (!steps) return table.reject_missing("steps", "the number of values from the first to the last, 2 or more");
    for (int k = 0; k < *steps; ++k)
        axis.choices.push_back(choice_of(axis, axis.low + (axis.high - axis.low) * k / (*steps - 1)));
}

// name with [[vary.choices]], each a label and what it sets
void read_choices(CaseTable& table, Axis& axis) {
    for (CaseTable& entry : table.tables("choices")) {
        Choice choice{entry.required_text("label"), {}};
        const TomlNode* set = entry.value("set");
        if (!set || set->type != Type::table || set->entries.empty())
            entry.reject_missing("set", "a table of keys of the case and their values: {\"pulley.lift\" = \"0 mm\"}");
        else
            for (const TomlEntry& item : set->entries) choice.settings.push_back({item.key, item.value});
        entry.finish();
        axis.choices.push_back(std::move(choice));
    }
}

// A key that can't be set in the base case is a mistake of the study, not of each of its cases.
void check_keys(CaseTable& table, const TomlNode& base, const Axis& axis) {
    std::vector<Choice> choices = axis.choices;
    if (axis.is_range) choices.push_back(choice_of(axis, axis.low));
    for (const Choice& choice : choices)
        for (const CaseSetting& setting : choice.settings) {
            TomlNode document = base;
            try {
                set_value(document, setting);
            } catch (const std::invalid_argument& bad) {
                return table.reject(axis.key.empty() ? "choices" : "key", bad.what(), "a key of the case file");
            }
        }
}

Axis read_axis(CaseTable& table, const TomlNode& base, bool sampled) {
    Axis axis;
    const bool grouped = table.has("choices");
    axis.key = grouped ? "" : table.required_text("key");
    axis.name = table.text("name").value_or(axis.key);
    if (grouped && axis.name.empty()) table.reject_missing("name", "a name for the choices");
    const TomlNode* values = table.value("values");
    if (grouped)
        read_choices(table, axis);
    else if (values)
        read_list(table, *values, axis);
    else
        read_range(table, sampled, axis);
    check_keys(table, base, axis);
    table.finish();
    return axis;
}

std::set<std::string> keys_of(const Axis& axis) {
    std::set<std::string> keys;
    if (axis.is_range) keys.insert(axis.key);
    for (const Choice& choice : axis.choices)
        for (const CaseSetting& setting : choice.settings) keys.insert(setting.key);
    return keys;
}

void read_axes(CaseTable& file, Study& study) {
    std::set<std::string> names, keys;
    for (CaseTable& table : file.tables("vary")) {
        Axis axis = read_axis(table, study.base, study.sample > 0);
        if (!axis.name.empty() && !names.insert(axis.name).second)
            table.reject(table.has("name") ? "name" : "key", "another axis has this name", "a name for each axis");
        if (axis.name == "case")
            table.reject(table.has("name") ? "name" : "key", "a column of the results has this name", "another name");
        for (const std::string& key : keys_of(axis))
            if (!keys.insert(key).second)
                table.reject(axis.key.empty() ? "choices" : "key", "another axis sets " + key, "each key on one axis");
        study.axes.push_back(std::move(axis));
    }
    if (study.axes.empty()) file.reject_missing("vary", "at least one [[vary]] with a key and its values");
}

void read_base(CaseTable& file, const std::filesystem::path& path, Study& study) {
    const std::string name = file.required_text("case");
    if (name.empty()) return;
    study.case_file = path.parent_path() / name;
    if (!std::filesystem::exists(study.case_file))
        return file.reject("case", "there is no such file", "a case file, its path from the study file's folder");
    study.case_text = read_text_file(study.case_file);
    study.base = read_document(study.case_text, study.case_file.string());
}

void read_sample(CaseTable table, Study& study) {
    study.sample = table.integer("latin_hypercube", 2, most_cases).value_or(0);
    study.seed = table.integer("seed", 1, 1000000000).value_or(1);
    table.finish();
}

}  // namespace

Choice choice_of(const Axis& axis, double number) {
    if (axis.unit.empty()) {
        const TomlNode value{.type = number == std::floor(number) ? Type::integer : Type::real, .number = number};
        return {label_of(value), {{axis.key, value}}};
    }
    const std::string text = fmt::format("{:.9g} {}", number, axis.unit);
    return {text, {{axis.key, TomlNode{.type = Type::text, .text = text}}}};
}

Study read_study(const std::filesystem::path& path) {
    Study study;
    study.text = read_text_file(path, "a study in TOML");
    const TomlNode document = read_document(study.text, path.string());
    Mistakes mistakes(path.string());
    CaseTable file(document, "", mistakes);
    study.title = file.text("title").value_or(path.stem().string());
    read_base(file, path, study);
    study.fields = file.truth("fields").value_or(false);
    read_sample(file.table("sample", false), study);
    read_axes(file, study);
    double cases = 1;
    for (const Axis& axis : study.axes) cases *= static_cast<double>(axis.choices.size());
    if (study.sample == 0 && cases > most_cases)
        file.reject("vary", fmt::format("the grid has {:.0f} cases", cases), fmt::format("up to {}", most_cases));
    file.finish();
    mistakes.throw_if_any();
    return study;
}

}  // namespace swale
