#include "materials/catalogue.h"

#include "materials/data_sheet.h"
#include "materials/fabrics.h"
#include "materials/steel_cord.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace swale {
namespace {

/// Letters for the same elsewhere: PN, polyester warp and nylon weft, PP, polyester both ways (a belt maker's catalogue of
/// fabric belts, 2012: P/N and P/P).
std::string usual_code(const std::string& code) {
    return code == "PN" ? "EP" : code == "PP" ? "EE" : code;
}

std::string leading_letters(const std::string& text) {
    std::string letters;
    for (const char c : text) {
        if (!std::isalpha(static_cast<unsigned char>(c))) break;
        letters += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    }
    return letters;
}

/// Empty where the letters mean one thing.
std::string ambiguity(const std::string& code) {
    return code == "PP" ? "PP is read as polyester both ways (EE); in the letters of DIN P is polyamide: then write NN" : "";
}

/// What people write for a family; EN: polyester warp, nylon weft.
constexpr std::array<std::pair<const char*, const char*>, 13> other_words{{{"ARAMID", "DPP"},
                                                                           {"DP", "DPP"},
                                                                           {"EN", "EP"},
                                                                           {"EPP", "EP"},
                                                                           {"POLYESTER", "EP"},
                                                                           {"POLY", "EP"},
                                                                           {"FABRIC", "EP"},
                                                                           {"NYLON", "NN"},
                                                                           {"POLYAMIDE", "NN"},
                                                                           {"PA", "NN"},
                                                                           {"COTTON", "CC"},
                                                                           {"SOLID", "PVC"},
                                                                           {"STEEL", "ST"}}};

/// What is to be said of letters that name no family, besides the list.
std::string hint(const std::string& code) {
    for (const auto& [word, family] : other_words)
        if (code == word) return std::string(", did you mean '") + family + "'?";
    for (const BeltFamily& family : belt_families())
        if (is_near(code, family.code)) return ", did you mean '" + family.code + "'?";
    for (const auto& [word, family] : other_words)
        if (code.size() > 3 && is_near(code, word)) return std::string(", did you mean '") + family + "'?";
    return "";
}

bool is_code(const std::string& letters) {
    return std::ranges::any_of(belt_families(), [&](const BeltFamily& family) { return family.code == usual_code(letters); });
}

/// As written; where that can't be read and its letters name no family, that is said too.
Designation parsed(const std::string& text) {
    try {
        return parse_designation(text);
    } catch (const BadDesignation& error) {
        const std::string letters = leading_letters(text), meant = is_code(letters) ? "" : hint(letters);
        throw BadDesignation(error.what() + (meant.empty() ? "" : "; '" + letters + "' is no belt family" + meant));
    }
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

const BeltFamily& belt_family(const Designation& designation) {
    return family_of(designation);
}

Belt belt_from_designation(const std::string& text, double width) {
    if (!(width > 0) || !std::isfinite(width))
        throw std::invalid_argument(fmt::format("belt width of {} mm; it must be positive", width));
    Designation designation = parsed(text);
    const std::string doubt = ambiguity(designation.carcass.family);
    designation.carcass.family = usual_code(designation.carcass.family);
    const BeltFamily& family = family_of(designation);
    check(designation, family);

    Belt belt;
    belt.designation = text;
    belt.carcass = family.carcass;
    belt.width = width;
    belt.construction = designation;
    belt.data = family.data_sheet(designation, {});
    belt.section = section_of(belt.data);
    belt.strength = designation.carcass.strength;
    belt.rated_tension = internal_value(belt.data, "rated_tension");
    if (!doubt.empty()) belt.warnings.push_back(doubt);
    return belt;
}

}  // namespace swale
