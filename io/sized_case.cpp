#include "io/sized_case.h"

#include "io/quantity.h"
#include "io/toml_node.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <stdexcept>
#include <vector>

namespace swale {

namespace {

const TomlNode* entry(const TomlNode& table, const std::string& key) {
    const auto found = std::ranges::find(table.entries, key, &TomlEntry::key);
    return found == table.entries.end() ? nullptr : &found->value;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

// Puts another length in the place of the value behind `key` on its line.
void replace(std::vector<std::string>& lines, const TomlNode& value, const std::string& key, double length) {
    std::string& line = lines.at(value.line - 1);
    const std::size_t place = line.find(value.written, line.find(key));
    if (place == std::string::npos) throw std::logic_error("the value of " + key + " does not stand on its line");
    line.replace(place, value.written.size(), fmt::format("\"{:.0f} mm\"", length));
}

}  // namespace

std::string with_distance(const std::string& text, double distance) {
    const TomlNode document = read_toml(text);
    const TomlNode& transition = *entry(document, "transition");
    const TomlNode& before = *entry(transition, "distance");
    const double factor = std::ceil(distance) / read_quantity(before.text, Kind::length);
    std::vector<std::string> lines = lines_of(text);
    replace(lines, before, "distance", std::ceil(distance));
    if (const TomlNode* idlers = entry(transition, "idlers"))
        for (const TomlNode& set : idlers->items) {
            const TomlNode& at = *entry(set, "at");
            replace(lines, at, "at", factor * read_quantity(at.text, Kind::length));
        }
    std::string sized;
    for (const std::string& line : lines) sized += line + "\n";
    return sized;
}

}  // namespace swale
