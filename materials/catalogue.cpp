#include "materials/catalogue.h"

#include "materials/data_sheet.h"
#include "materials/fabrics.h"
#include "materials/steel_cord.h"

#include <cmath>
#include <stdexcept>

namespace swale {
namespace {

/// Other letters for the same: PN, polyester warp and nylon weft, on an independent conveyor-belt reference site.
std::string usual_code(const std::string& code) {
    return code == "PN" ? "EP" : code;
}

/// What is to be said of letters that name no family, besides the list.
std::string hint(const std::string& code) {
    if (code == "PP")
        return ": polyamide both ways in the letters of DIN (write NN), polyester both ways in North America (write EE)";
    for (const BeltFamily& family : belt_families())
        if (is_near(code, family.code)) return ", did you mean '" + family.code + "'?";
    return "";
}

const BeltFamily& family_of(const Designation& designation) {
    const std::string& code = designation.carcass.family;
    std::string known;
    for (const BeltFamily& family : belt_families()) {
        if (family.code == code) return family;
        known += (known.empty() ? "" : ", ") + family.code + " (" + family.title + ")";
    }
    throw BadDesignation("belt '" + to_string(designation) + "': unknown belt family '" + code + "'" + hint(code) +
                         "; known are " + known);
}

}  // namespace

const std::vector<BeltFamily>& belt_families() {
    static const std::vector<BeltFamily> families = [] {
        std::vector<BeltFamily> all;
        for (const Fabric& one : fabrics()) all.push_back(textile_family(one));
        all.push_back(steel_cord_family());
        return all;
    }();
    return families;
}

Belt belt_from_designation(const std::string& text, double width) {
    if (!(width > 0) || !std::isfinite(width))
        throw std::invalid_argument("belt width of " + std::to_string(width) + " mm; it must be positive");
    Designation designation = parse_designation(text);
    designation.carcass.family = usual_code(designation.carcass.family);
    const BeltFamily& family = family_of(designation);
    check(designation, family);

    Belt belt;
    belt.designation = text;
    belt.carcass = family.carcass;
    belt.width = width;
    belt.data = family.data_sheet(designation);
    belt.section = section_of(belt.data);
    belt.strength = designation.carcass.strength;
    belt.rated_tension = internal_value(belt.data, "rated_tension");
    return belt;
}

}  // namespace swale
