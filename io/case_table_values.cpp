// The part of CaseTable that reads single values; tables in tables and the mistakes themselves are in case_table.cpp.
#include "io/case_table.h"

#include "io/near_miss.h"

#include <fmt/format.h>
#include <algorithm>
#include <limits>

namespace swale {
namespace {

constexpr double unreadable = std::numeric_limits<double>::quiet_NaN();

std::string in_words(const Allowed& allowed) {
    return fmt::format("{} from {} {} to {} {}, written like \"{}\"", name_of(allowed.kind), allowed.low,
                       print_unit(allowed.kind), allowed.high, print_unit(allowed.kind), example_of(allowed.kind));
}

bool within(double value, const Allowed& allowed) {
    return value >= from_print(allowed.low, allowed.kind) && value <= from_print(allowed.high, allowed.kind);
}

bool is_number(const TomlNode& node) {
    return node.type == TomlNode::Type::integer || node.type == TomlNode::Type::real;
}

bool has_control_character(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; });
}

constexpr std::size_t longest_text = 120;

}  // namespace

std::optional<double> CaseTable::quantity(const std::string& key, const Allowed& allowed) {
    const TomlNode* node = value(key);
    if (node == nullptr) return std::nullopt;
    std::string problem;
    if (is_number(*node)) {
        problem = "a bare number where a quantity with its unit belongs";
    } else if (node->type != TomlNode::Type::text) {
        problem = "wrong type";
    } else {
        try {
            const double result = read_quantity(node->text, allowed.kind);
            if (within(result, allowed)) return result;
            problem = "out of range";
        } catch (const BadQuantity& error) {
            problem = error.what();
        }
    }
    reject(key, problem, in_words(allowed));
    return unreadable;
}

double CaseTable::required_quantity(const std::string& key, const Allowed& allowed) {
    const std::optional<double> result = quantity(key, allowed);
    if (!result) reject_missing(key, in_words(allowed));
    return result.value_or(unreadable);
}

std::optional<double> CaseTable::checked_number(const std::string& key, const TomlNode& node, double low, double high,
                                                bool whole) {
    const std::string allowed = fmt::format("a {} from {} to {}", whole ? "whole number" : "plain number", low, high);
    const bool right_type = whole ? node.type == TomlNode::Type::integer : is_number(node);
    if (right_type && node.number >= low && node.number <= high) return node.number;
    reject(key, right_type ? "out of range" : "wrong type", allowed);
    return std::nullopt;
}

std::optional<double> CaseTable::number(const std::string& key, double low, double high) {
    const TomlNode* node = value(key);
    return node == nullptr ? std::nullopt : checked_number(key, *node, low, high, false);
}

std::optional<int> CaseTable::integer(const std::string& key, int low, int high) {
    const TomlNode* node = value(key);
    const auto result = node == nullptr ? std::nullopt : checked_number(key, *node, low, high, true);
    return result ? std::optional(static_cast<int>(*result)) : std::nullopt;
}

std::optional<bool> CaseTable::truth(const std::string& key) {
    const TomlNode* node = value(key);
    if (node == nullptr) return std::nullopt;
    if (node->type == TomlNode::Type::boolean) return node->written == "true";
    reject(key, "wrong type", "true or false");
    return std::nullopt;
}

std::optional<std::string> CaseTable::text(const std::string& key) {
    const TomlNode* node = value(key);
    if (node == nullptr) return std::nullopt;
    const std::string allowed = fmt::format("one line of text in quotes, up to {} bytes", longest_text);
    if (node->type != TomlNode::Type::text) {
        reject(key, "wrong type", allowed);
    } else if (node->text.find_first_not_of(' ') == std::string::npos) {
        reject(key, "the text is empty", allowed);
    } else if (has_control_character(node->text) || node->text.size() > longest_text) {
        reject(key, "the text is no single line or too long", allowed);
    } else {
        return node->text;
    }
    return std::string();
}

std::string CaseTable::required_text(const std::string& key) {
    const std::optional<std::string> result = text(key);
    if (!result) reject_missing(key, "one line of text in quotes");
    return result.value_or("");
}

std::optional<int> CaseTable::index_of_choice(const std::string& key, const std::vector<std::string>& words) {
    const TomlNode* node = value(key);
    if (node == nullptr) return std::nullopt;
    const auto found = std::find(words.begin(), words.end(), node->text);
    if (node->type == TomlNode::Type::text && found != words.end()) return static_cast<int>(found - words.begin());
    reject(key, node->type == TomlNode::Type::text ? "unknown word" : "wrong type", listed(words, true));
    return std::nullopt;
}

}  // namespace swale
