#pragma once

#include <optional>
#include <stdexcept>
#include <string>

namespace swale {

/// A trade designation that can't be read or names no known belt. The sentence says what is wrong and what is allowed.
class BadDesignation : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Carcass of a designation: "EP 800/4", "PVG 1000/1" (solid woven, also written "PVG 1000S"), or "ST 1600" where there are no
/// plies to count.
struct CarcassCode {
    std::string family;  ///< in capitals: "EP", "ST"
    int strength = 0;    ///< nominal breaking strength of the whole carcass per width [N/mm]
    std::optional<int> plies;

    bool operator==(const CarcassCode&) const = default;
};

/// Trade designation of a belt: carcass, then top + bottom cover, as in "EP 800/4 6+3".
struct Designation {
    CarcassCode carcass;
    double top_cover = 0;     ///< carrying side [mm]
    double bottom_cover = 0;  ///< side of the rolls [mm]

    bool operator==(const Designation&) const = default;
};

/// Reads "EP 800/4 6+3", whatever its case and spacing, with "EP-800/4" for "EP 800/4" and a comma for a decimal point; only
/// the blank between carcass and covers can't be left out. Whether such a belt exists is for the family to say. Throws
/// BadDesignation.
Designation parse_designation(const std::string& text);

/// "EP 800/4"
std::string to_string(const CarcassCode& carcass);

/// "EP 800/4 6+3"; parses to the same designation.
std::string to_string(const Designation& designation);

}  // namespace swale
