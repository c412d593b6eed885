#include "io/study/case_variant.h"

#include "io/belt_table.h"
#include "io/toml_text.h"
#include "io/trough_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <optional>
#include <sstream>
#include <stdexcept>

namespace swale {

namespace {

using Type = TomlNode::Type;

/// "idlers[2]" is the second item of what stands at "idlers".
struct Step {
    std::string key;
    std::size_t item = 0;  // from 1; 0: none
};

bool in_key(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '-';
}

// "idlers", "idlers[2]"; absent if it is neither.
std::optional<Step> step_of(const std::string& text) {
    Step step;
    const auto end = std::ranges::find_if_not(text, in_key);
    step.key = std::string(text.begin(), end);
    if (step.key.empty()) return {};
    if (end == text.end()) return step;
    const char *first = &*end + 1, *last = text.data() + text.size() - 1;
    const auto [behind, error] = std::from_chars(first, last, step.item);
    const bool counted = *end == '[' && *last == ']' && error == std::errc{} && behind == last && step.item > 0;
    return counted ? std::optional(step) : std::nullopt;
}

std::vector<Step> steps_of(const std::string& key) {
    std::vector<Step> steps;
    for (std::size_t at = 0; at <= key.size();) {
        const std::size_t dot = std::min(key.find('.', at), key.size());
        const std::optional<Step> step = step_of(key.substr(at, dot - at));
        if (!step)
            throw std::invalid_argument("\"" + key + "\" is no key of a case file, such as trough.angle or tension[1].total");
        steps.push_back(*step);
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

// What "2.4 widths" is of its case; absent for every other text and where the case does not say.
std::optional<std::string> resolved(const std::string& text, const Measures& measures) {
    std::istringstream stream(text);
    double number = 0;
    std::string unit, more;
    if (!(stream >> number >> unit) || stream >> more) return {};
    const std::optional<double> measure = unit == "widths"   ? measures.width
                                          : unit == "depths" ? measures.depth
                                          : unit == "rated"  ? measures.rated
                                                             : std::nullopt;
    if (!measure) return {};
    return fmt::format("{:.9g} {}", number * *measure, unit == "rated" ? "N" : "mm");
}

void resolve(TomlNode& value, const Measures& measures) {
    for (TomlEntry& entry : value.entries) resolve(entry.value, measures);
    for (TomlNode& item : value.items) resolve(item, measures);
    if (value.type == Type::text) value.text = resolved(value.text, measures).value_or(value.text);
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
