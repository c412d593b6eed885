#include "materials/family.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <sstream>
#include <stdexcept>

namespace swale {
namespace {

/// How far a known carcass is from the one asked for: a ply more or less weighs as much as 20 % of strength.
double distance(const CarcassCode& asked, const CarcassCode& known) {
    const double strength = std::abs(std::log(std::max(asked.strength, 1) / static_cast<double>(known.strength)));
    const bool both = asked.plies && known.plies;
    return strength + (both ? 0.2 * std::abs(*asked.plies - *known.plies) : 0.0);
}

std::string nearest(const CarcassCode& asked, std::vector<CarcassCode> known) {
    std::stable_sort(known.begin(), known.end(),
                     [&](const CarcassCode& a, const CarcassCode& b) { return distance(asked, a) < distance(asked, b); });
    std::ostringstream list;
    for (std::size_t i = 0; i < std::min<std::size_t>(3, known.size()); ++i)
        list << (i ? ", '" : "'") << to_string(known[i]) << "'";
    return list.str();
}

/// Strengths known with the plies asked for; with all plies where none are asked for or none fit.
std::string strengths(const CarcassCode& asked, const BeltFamily& family) {
    std::vector<int> values;
    for (const CarcassCode& known : family.carcasses)
        if (known.plies == asked.plies) values.push_back(known.strength);
    if (values.empty()) return "";
    std::ostringstream list;
    list << "; known strengths" << (asked.plies ? " with " + std::to_string(*asked.plies) + " plies" : "");
    for (std::size_t i = 0; i < values.size(); ++i) list << (i ? ", " : ": ") << values[i];
    return list.str() + " N/mm";
}

/// Where the strength asked for is that of one ply.
std::string per_ply(const CarcassCode& asked, const BeltFamily& family) {
    const CarcassCode whole{asked.family, asked.strength * asked.plies.value_or(0), asked.plies};
    if (std::find(family.carcasses.begin(), family.carcasses.end(), whole) == family.carcasses.end()) return "";
    return "; the strength is the whole carcass's: if each ply has " + std::to_string(asked.strength) + " N/mm write '" +
           to_string(whole) + "'";
}

/// Where plies and the strength of one stand in each other's place.
std::string swapped(const CarcassCode& asked, const BeltFamily& family) {
    const CarcassCode whole{asked.family, asked.strength * asked.plies.value_or(0), asked.strength};
    if (std::ranges::find(family.carcasses, whole) == family.carcasses.end()) return "";
    return "; the whole carcass's strength stands before '/', its plies behind: " + std::to_string(asked.strength) +
           " plies of " + std::to_string(*asked.plies) + " N/mm are '" + to_string(whole) + "'";
}

void check_cover(double cover, const std::string& which, const Designation& designation, const BeltFamily& family) {
    if (cover >= family.cover_min && cover <= family.cover_max) return;
    std::ostringstream why;
    why << "belt '" << to_string(designation) << "': " << which << " cover of " << cover << " mm; allowed for " << family.code
        << " are " << family.cover_min << " to " << family.cover_max << " mm";
    throw BadDesignation(why.str());
}

}  // namespace

bool is_near(const std::string& code, const std::string& known) {
    if (std::is_permutation(code.begin(), code.end(), known.begin(), known.end())) return true;
    const std::string& shorter = code.size() < known.size() ? code : known;
    const std::string& longer = code.size() < known.size() ? known : code;
    // The shorter one's letters stand in the longer one in their order, with one more.
    auto at = shorter.begin();
    for (const char letter : longer)
        if (at != shorter.end() && *at == letter) ++at;
    return longer.size() == shorter.size() + 1 && shorter.size() > 1 && at == shorter.end();
}

double carcass_within(double thickness, double covers) {
    if (thickness > covers) return thickness - covers;
    std::ostringstream why;
    why << "thickness of " << thickness << " mm: the covers of the designation alone have " << covers << " mm";
    throw std::invalid_argument(why.str());
}

void check(const Designation& designation, const BeltFamily& family) {
    const CarcassCode& asked = designation.carcass;
    if (std::find(family.carcasses.begin(), family.carcasses.end(), asked) == family.carcasses.end())
        throw BadDesignation("belt '" + to_string(designation) + "': no known carcass '" + to_string(asked) +
                             "'; nearest are " + nearest(asked, family.carcasses) + per_ply(asked, family) +
                             swapped(asked, family) + strengths(asked, family) + "; form: " + family.form);
    check_cover(designation.top_cover, "top", designation, family);
    check_cover(designation.bottom_cover, "bottom", designation, family);
}

}  // namespace swale
