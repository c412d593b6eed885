#include "io/size_table.h"

#include "io/toml_document.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace swale {

namespace {

constexpr Allowed distance_range = {Kind::length, 100, 100000}, lift_range = {Kind::length, -1000, 2000};
constexpr double shortest_in_widths = 0.5, longest_in_widths = 12, highest_in_depths = 0.5;

// Steeper than the full sets' none can be of use.
std::vector<double> read_angles(CaseTable& table, const TransitionLayout& layout) {
    const TomlNode* node = table.value("angles");
    if (node == nullptr) return {};
    const std::string allowed =
        fmt::format("a list of angles like [\"10 deg\", \"20 deg\"], each above 0 and up to the full sets' {:.3g} deg",
                    layout.trough.angle * 180 / std::numbers::pi);
    std::vector<double> angles;
    for (const TomlNode& item : node->items) {
        try {
            angles.push_back(read_quantity(item.type == TomlNode::Type::text ? item.text : item.written, Kind::angle));
        } catch (const BadQuantity& bad) {
            table.reject("angles", bad.what(), allowed);
            return {};
        }
        if (!(angles.back() > 0) || angles.back() > layout.trough.angle + 1e-9)
            table.reject("angles", "such a set does not lead from the flat pulley to the trough", allowed);
    }
    if (node->type != TomlNode::Type::array || angles.empty() || angles.size() > 20)
        table.reject("angles", "this is no list of one to twenty angles", allowed);
    return angles;
}

}  // namespace

const std::vector<std::string>& aim_words() {
    static const std::vector<std::string> words{"distance", "lift", "idlers", "all"};
    return words;
}

SizingBounds read_size_table(CaseTable table, const TransitionLayout& layout) {
    SizingBounds bounds;
    const double width = layout.belt_width;
    bounds.aim = table.choice<SizingAim>("find", aim_words()).value_or(bounds.aim);
    bounds.shortest = table.quantity("shortest", distance_range).value_or(shortest_in_widths * width);
    bounds.longest = table.quantity("longest", distance_range).value_or(longest_in_widths * width);
    bounds.lowest_lift = table.quantity("lowest_lift", lift_range).value_or(std::min(0.0, layout.pulley.lift));
    bounds.highest_lift = table.quantity("highest_lift", lift_range)
                              .value_or(std::max(highest_in_depths * layout.trough_depth(), layout.pulley.lift));
    bounds.most_idlers = table.integer("most_idlers", 0, 3).value_or(bounds.most_idlers);
    bounds.angles = read_angles(table, layout);
    if (bounds.shortest >= bounds.longest)
        table.reject(table.has("longest") ? "longest" : "shortest", "the shortest distance is not below the longest",
                     fmt::format("longest above {:.6g} mm", bounds.shortest));
    if (bounds.lowest_lift >= bounds.highest_lift)
        table.reject(table.has("highest_lift") ? "highest_lift" : "lowest_lift", "the lowest lift is not below the highest",
                     fmt::format("highest_lift above {:.6g} mm", bounds.lowest_lift));
    table.finish();
    return bounds;
}

SizingBounds sizing_bounds(const std::string& case_text, const std::string& file, const TransitionCase& transition) {
    const TomlNode document = read_document(case_text, file);
    Mistakes mistakes(file);
    CaseTable table(document, "", mistakes);
    SizingBounds bounds = read_size_table(table.table("size", false), transition.layout);
    bounds.relative = std::min(bounds.relative, transition.settings.accuracy / 2);
    return bounds;
}

}  // namespace swale
