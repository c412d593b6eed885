#include "io/sized_case.h"

#include "io/quantity.h"
#include "io/study/case_variant.h"
#include "io/toml_node.h"
#include "io/toml_text.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>
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
            replace(lines, at, "at", std::round(factor * read_quantity(at.text, Kind::length)));
        }
    std::string sized;
    for (const std::string& line : lines) sized += line + "\n";
    return sized;
}

namespace {

TomlNode text_node(const std::string& text) {
    TomlNode node;
    node.type = TomlNode::Type::text;
    node.text = text;
    return node;
}

TomlNode length_node(double length) {
    return text_node(fmt::format("{:.0f} mm", length));
}

TomlNode angle_node(double angle) {
    return text_node(fmt::format("{:.6g} deg", angle * 180 / std::numbers::pi));
}

TomlNode station_node(const Station& station) {
    TomlNode node;
    node.entries = {{"at", length_node(station.at)}, {"angle", angle_node(station.angle)}};
    if (station.lift) node.entries.push_back({"lift", length_node(*station.lift)});
    if (station.inner_angle) node.entries.push_back({"inner_angle", angle_node(*station.inner_angle)});
    if (station.support == Support::held) node.entries.push_back({"support", text_node("held")});
    return node;
}

TomlNode stations_node(const std::vector<Station>& stations) {
    TomlNode node;
    node.type = TomlNode::Type::array;
    for (const Station& station : stations) node.items.push_back(station_node(station));
    return node;
}

// Shares, angles and heights are as they were.
bool same_but_for_distance(const TransitionLayout& a, const TransitionLayout& b) {
    const auto same = [](double one, double other) { return std::abs(one - other) < 1e-9; };
    if (!same(a.pulley.lift, b.pulley.lift) || a.stations.size() != b.stations.size()) return false;
    for (std::size_t k = 0; k < a.stations.size(); ++k)
        if (!same(a.stations[k].angle, b.stations[k].angle) ||
            std::abs(a.stations[k].at / a.distance * b.distance - b.stations[k].at) > 0.5 + 1e-9)
            return false;
    return true;
}

}  // namespace

std::string with_arrangement(const std::string& text, const TransitionLayout& before, const TransitionLayout& after) {
    if (same_but_for_distance(before, after)) return with_distance(text, after.distance);
    TomlNode document = read_toml(text);
    set_value(document, {"transition.distance", length_node(after.distance)});
    set_value(document, {"pulley.lift", length_node(after.pulley.lift)});
    const auto transition = std::ranges::find(document.entries, "transition", &TomlEntry::key);
    std::erase_if(transition->value.entries, [](const TomlEntry& e) { return e.key == "idlers"; });
    if (!after.stations.empty()) set_value(document, {"transition.idlers", stations_node(after.stations)});
    return "# Distance, lift and intermediate sets as found by swale size; comments are in the case it was given.\n" +
           toml_text(document);
}

}  // namespace swale
