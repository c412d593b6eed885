#include "io/study/case_variant.h"

#include "io/belt_table.h"
#include "io/toml_text.h"
#include "io/trough_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <regex>
#include <stdexcept>

namespace swale {

namespace {

using Type = TomlNode::Type;

/// "idlers[2]" is the second item of what stands at "idlers".
struct Step {
    std::string key;
    std::size_t item = 0;  // from 1; 0: none
};

std::vector<Step> steps_of(const std::string& key) {
    static const std::regex step(R"(([A-Za-z0-9_-]+)(?:\[([1-9][0-9]?)\])?)");
    std::vector<Step> steps;
    std::size_t at = 0;
    while (at <= key.size()) {
        const std::size_t dot = std::min(key.find('.', at), key.size());
        std::smatch parts;
        const std::string text = key.substr(at, dot - at);
        if (!std::regex_match(text, parts, step))
            throw std::invalid_argument("\"" + key + "\" is no key of a case file, such as trough.angle or tension[1].total");
        steps.push_back({parts[1], parts[2].matched ? std::stoul(parts[2]) : 0});
        at = dot + 1;
    }
    return steps;
}

TomlNode& entry_at(TomlNode& table, const std::string& key) {
    const auto found = std::ranges::find(table.entries, key, &TomlEntry::key);
    if (found != table.entries.end()) return found->value;
    table.entries.push_back({key, TomlNode{}});
    return table.entries.back().value;
}

TomlNode& go(TomlNode& from, const Step& step, const std::string& key) {
    if (from.type != Type::table) throw std::invalid_argument("\"" + key + "\" leads into what is no table of the case");
    TomlNode& node = entry_at(from, step.key);
    if (step.item == 0) return node;
    if (node.type != Type::array || step.item > node.items.size())
        throw std::invalid_argument(fmt::format("\"{}\": the case has no {} number {}", key, step.key, step.item));
    return node.items[step.item - 1];
}

/// What relative values refer to; absent where the case does not say.
struct Measures {
    std::optional<double> width, depth, rated;
};

const TomlNode* table_of(const TomlNode& document, const char* key) {
    const auto found = std::ranges::find(document.entries, key, &TomlEntry::key);
    return found != document.entries.end() && found->value.type == Type::table ? &found->value : nullptr;
}

// Throws InputErrors and FileError of a belt catalogue that can't be read.
Measures read_measures(const TomlNode& belt_table, const TomlNode& trough_table, const std::string& case_file) {
    Mistakes mistakes("");
    TransitionLayout layout;
    const Belt belt = read_belt(CaseTable(belt_table, "belt", mistakes), {case_file, {}});
    CaseTable trough(trough_table, "trough", mistakes);
    layout.belt_width = belt.width;
    layout.trough = read_trough(trough, belt.width);
    if (!mistakes.none()) return {};
    Measures measures{belt.width, layout.trough_depth(), {}};
    if (belt.rated_tension) measures.rated = *belt.rated_tension * belt.width;
    return measures;
}

Measures measures_of(const TomlNode& document, const std::string& case_file) {
    const TomlNode *belt = table_of(document, "belt"), *trough = table_of(document, "trough");
    if (!belt || !trough) return {};
    try {
        return read_measures(*belt, *trough, case_file);
    } catch (const std::runtime_error&) {
        return {};  // the reader of the case will say it
    }
}

void resolve(TomlNode& value, const Measures& measures) {
    static const std::regex relative(R"(\s*([-+]?[0-9]*\.?[0-9]+)\s*(widths|depths|rated)\s*)");
    for (TomlEntry& entry : value.entries) resolve(entry.value, measures);
    for (TomlNode& item : value.items) resolve(item, measures);
    std::smatch parts;
    if (value.type != Type::text || !std::regex_match(value.text, parts, relative)) return;
    const bool tension = parts[2] == "rated";
    const auto measure = tension ? measures.rated : parts[2] == "widths" ? measures.width : measures.depth;
    if (measure) value.text = fmt::format("{:.9g} {}", std::stod(parts[1]) * *measure, tension ? "N" : "mm");
}

}  // namespace

void set_value(TomlNode& document, const CaseSetting& setting) {
    TomlNode* node = &document;
    for (const Step& step : steps_of(setting.key)) node = &go(*node, step, setting.key);
    *node = setting.value;
}

std::string variant_text(const TomlNode& base, const std::vector<CaseSetting>& settings, const std::string& case_file) {
    TomlNode document = base;
    for (const CaseSetting& setting : settings) set_value(document, setting);
    resolve(document, measures_of(document, case_file));
    return toml_text(document);
}

}  // namespace swale
