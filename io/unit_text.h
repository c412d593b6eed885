#pragma once

#include <string>
#include <vector>

namespace swale {

/// One factor of a unit: "mm^-2" is {"mm", -2}.
struct UnitFactor {
    std::string symbol;
    int power = 1;
};

using UnitFactors = std::vector<UnitFactor>;

/// Splits a unit into its factors: symbols with powers ("^2", "2", the raised digits), joined by a blank, ".", "*", the raised
/// dot or "/", which divides by the next factor alone. Trade spellings are replaced by the unit library's ("deg", "piw", "kp").
/// Throws BadQuantity if the text is no such thing: numbers, brackets, "@" and offsets never reach the unit library.
UnitFactors split_unit(const std::string& text);

/// The factors in the unit library's notation: "N.mm-1".
std::string join_unit(const UnitFactors& factors);

}  // namespace swale
