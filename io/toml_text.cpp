#include "io/toml_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cctype>
#include <vector>

namespace swale {

namespace {

using Type = TomlNode::Type;

std::string quoted(const std::string& text) {
    std::string result = "\"";
    for (const char c : text) {
        const auto code = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            result += std::string("\\") + c;
        else
            result += code < 0x20 || code == 0x7F ? fmt::format("\\u{:04X}", code) : std::string(1, c);
    }
    return result + "\"";
}

std::string key_text(const std::string& key) {
    const auto bare = [](char c) { return (std::isalnum(static_cast<unsigned char>(c)) != 0) || c == '_' || c == '-'; };
    return !key.empty() && std::ranges::all_of(key, bare) ? key : quoted(key);
}

std::string real(double number) {
    const std::string text = fmt::format("{}", number);
    return text.find_first_of(".en") == std::string::npos ? text + ".0" : text;
}

bool has_header(const TomlNode& value) {
    if (value.type == Type::table) return true;
    const auto is_table = [](const TomlNode& item) { return item.type == Type::table; };
    return value.type == Type::array && !value.items.empty() && std::ranges::all_of(value.items, is_table);
}

void write_table(const TomlNode& table, const std::string& path, std::string& text) {
    for (const TomlEntry& entry : table.entries)
        if (!has_header(entry.value)) text += key_text(entry.key) + " = " + toml_value(entry.value) + "\n";
    for (const auto& [key, value] : table.entries) {
        if (!has_header(value)) continue;
        const std::string name = (path.empty() ? "" : path + ".") + key_text(key);
        if (value.type == Type::table) {
            text += "\n[" + name + "]\n";
            write_table(value, name, text);
        }
        for (const TomlNode& item : value.items) {
            text += "\n[[" + name + "]]\n";
            write_table(item, name, text);
        }
    }
}

}  // namespace

std::string toml_value(const TomlNode& value) {
    std::vector<std::string> parts;
    switch (value.type) {
        case Type::text:
        case Type::date:
            return quoted(value.type == Type::text ? value.text : value.written);
        case Type::integer:
            return fmt::format("{:.0f}", value.number);
        case Type::real:
            return real(value.number);
        case Type::boolean:
            return value.written;
        case Type::array:
            for (const TomlNode& item : value.items) parts.push_back(toml_value(item));
            return fmt::format("[{}]", fmt::join(parts, ", "));
        case Type::table:
            for (const TomlEntry& entry : value.entries) parts.push_back(key_text(entry.key) + " = " + toml_value(entry.value));
            return fmt::format("{{{}}}", fmt::join(parts, ", "));
    }
    return "";
}

std::string toml_text(const TomlNode& document) {
    std::string text;
    write_table(document, "", text);
    return text;
}

}  // namespace swale
