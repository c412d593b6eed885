#include "materials/uncertain_belt.h"

#include "materials/data_sheet.h"
#include "materials/following.h"
#include "materials/stiffness_share.h"

#include <stdexcept>

namespace swale {
namespace {

const Range& range_of(const Belt& belt, const std::string& name) {
    const BeltDatum& entry = entry_of(belt.data, name);
    if (!entry.range) throw std::invalid_argument(name + " of belt '" + belt.designation + "' has no range");
    return *entry.range;
}

void require_positive_definite(const Section& section, const std::string& moved) {
    const std::string fault =
        why_not_positive_definite(section.membrane, "A") + why_not_positive_definite(section.bending, "D");
    if (!fault.empty()) throw std::invalid_argument(moved + ": " + fault);
}

// Thickness and modulus, or a number that only its shares follow.
DataSheet moved_to(const Belt& belt, const std::string& name, double value) {
    const double internal = internal_value(belt.data, name) * value / entry_of(belt.data, name).value;
    if (name == "thickness" || name == "A11") return following(belt, name, internal);
    DataSheet sheet = belt.data;
    scale_stiffness(sheet, name, value / entry_of(belt.data, name).value);
    return sheet;
}

}  // namespace

std::vector<std::string> uncertain_data(const Belt& belt) {
    std::vector<std::string> names;
    for (const BeltDatum& entry : belt.data)
        if (entry.range) names.push_back(entry.name);
    return names;
}

Belt at_end(const Belt& belt, const std::string& name, End end) {
    const Range& range = range_of(belt, name);
    const double value = end == End::low ? range.low : range.high;
    Belt moved = belt;
    moved.data = moved_to(belt, name, value);
    BeltDatum& entry = entry_of(moved.data, name);
    entry.value = value;
    entry.origin.source = std::string(end == End::low ? "low" : "high") + " end of its range: " + range.source;
    moved.section = section_of(moved.data);
    if (name == "rated_tension") moved.rated_tension = internal_value(moved.data, name);
    require_positive_definite(moved.section, name + " at the " + (end == End::low ? "low" : "high") + " end of its range");
    return moved;
}

}  // namespace swale
