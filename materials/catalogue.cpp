#include "materials/catalogue.h"

#include "materials/data_sheet.h"
#include "materials/steel_cord.h"
#include "materials/textile.h"

#include <cmath>
#include <stdexcept>

namespace swale {
namespace {

const BeltFamily& family_of(const Designation& designation) {
    std::string known;
    for (const BeltFamily& family : belt_families()) {
        if (family.code == designation.carcass.family) return family;
        known += (known.empty() ? "" : ", ") + family.code + " (" + family.title + ")";
    }
    throw BadDesignation("belt '" + to_string(designation) + "': unknown belt family '" + designation.carcass.family +
                         "'; known are " + known);
}

}  // namespace

const std::vector<BeltFamily>& belt_families() {
    static const std::vector<BeltFamily> families{
        ep_family(),
        steel_cord_family(),
    };
    return families;
}

Belt belt_from_designation(const std::string& text, double width) {
    if (!(width > 0) || !std::isfinite(width))
        throw std::invalid_argument("belt width of " + std::to_string(width) + " mm; it must be positive");
    const Designation designation = parse_designation(text);
    const BeltFamily& family = family_of(designation);
    check(designation, family);

    Belt belt;
    belt.designation = text;
    belt.carcass = family.carcass;
    belt.width = width;
    belt.data = family.data_sheet(designation);
    belt.section = section_of(belt.data);
    belt.rated_tension = internal_value(belt.data, "rated_tension");
    return belt;
}

}  // namespace swale
