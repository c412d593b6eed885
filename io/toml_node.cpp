#include "io/toml_node.h"

#include <fmt/format.h>
#include <toml++/toml.h>
#include <algorithm>
#include <sstream>
#include <string_view>

namespace swale {
namespace {

constexpr std::size_t longest_printed = 60;  // bytes
constexpr std::size_t longest_line = 2000;   // bytes

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

std::string shortened(const std::string& text) {
    if (text.size() <= longest_printed) return text;
    std::size_t end = longest_printed;
    while (end > 0 && continues_character(text[end])) --end;
    return text.substr(0, end) + "...";
}

template <typename Value>
std::string printed(const Value& value) {
    std::ostringstream out;
    out << value;
    return out.str();
}

int line_of(const toml::source_region& source) {
    return static_cast<int>(source.begin.line);
}

/// No key of a case lies deeper; what does is known as a table or array without content.
constexpr int deepest = 16;

TomlNode read_node(const toml::node& node, int line, int depth);

TomlNode read_table(const toml::table& table, int line, int depth) {
    TomlNode result{.type = TomlNode::Type::table, .line = line, .written = "a table"};
    if (depth > deepest) return result;
    for (const auto& [key, value] : table)
        result.entries.push_back({std::string(key.str()), read_node(value, line_of(key.source()), depth + 1)});
    std::stable_sort(result.entries.begin(), result.entries.end(),
                     [](const TomlEntry& a, const TomlEntry& b) { return a.value.line < b.value.line; });
    return result;
}

TomlNode read_array(const toml::array& array, int line, int depth) {
    TomlNode result{.type = TomlNode::Type::array, .line = line, .written = array.empty() ? "an empty array" : "an array"};
    if (depth > deepest) return result;
    for (const toml::node& item : array) result.items.push_back(read_node(item, line_of(item.source()), depth + 1));
    return result;
}

TomlNode read_text(const std::string& text, int line) {
    return {.type = TomlNode::Type::text, .line = line, .written = "\"" + on_one_line(text) + "\"", .text = text};
}

TomlNode read_number(TomlNode::Type type, double number, const std::string& written, int line) {
    return {.type = type, .line = line, .written = written, .number = number};
}

TomlNode read_node(const toml::node& node, int line, int depth) {
    using Type = TomlNode::Type;
    if (const auto* table = node.as_table()) return read_table(*table, line, depth);
    if (const auto* array = node.as_array()) return read_array(*array, line, depth);
    if (const auto* text = node.as_string()) return read_text(text->get(), line);
    if (const auto* integer = node.as_integer())
        return read_number(Type::integer, static_cast<double>(integer->get()), printed(integer->get()), line);
    if (const auto* real = node.as_floating_point()) return read_number(Type::real, real->get(), printed(real->get()), line);
    if (const auto* boolean = node.as_boolean())
        return {.type = Type::boolean, .line = line, .written = boolean->get() ? "true" : "false"};
    return {.type = Type::date, .line = line, .written = "a date or time"};
}

/// A dotted key nests a table a dot, and readers of trees call themselves a level: the depth must not follow the file's size.
void check_line_lengths(const std::string& text) {
    std::istringstream in(text);
    int number = 0;
    for (std::string row; std::getline(in, row);)
        if (++number; row.size() > longest_line)
            throw TomlSyntaxError(fmt::format("a line is longer than {} bytes", longest_line), number);
}

}  // namespace

std::string on_one_line(const std::string& text) {
    std::string result;
    for (const char c : shortened(text)) {
        const auto code = static_cast<unsigned char>(c);
        result += code < 0x20 || code == 0x7F ? fmt::format("\\u{:04X}", code) : std::string(1, c);
    }
    return result;
}

TomlNode read_toml(const std::string& text) {
    check_line_lengths(text);
    try {
        return read_table(toml::parse(std::string_view(text)), 1, 0);
    } catch (const toml::parse_error& error) {
        throw TomlSyntaxError(std::string(error.description()), line_of(error.source()));
    }
}

}  // namespace swale
