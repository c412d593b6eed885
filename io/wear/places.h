#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>

// What a reading of a roll may be, the same in a survey and in its CSV. Not a number passes: it has been named already.
namespace swale {

inline constexpr double deepest_wear = 50;  ///< [mm]
inline constexpr const char* depth_text = "from 0 to 50 mm";

inline bool allowed_depth(double depth) {
    return !(depth < 0 || depth > deepest_wear);
}

/// `half` of the roll's length; half a millimetre beyond its end is still on it.
inline bool on_roll(double y, double half) {
    return !(std::abs(y) > half + 0.5);
}

inline std::string off_roll_text(double y) {
    return fmt::format("{:.0f} mm is off the roll", y);
}

inline std::string roll_text(double half) {
    return fmt::format("-{0:.0f} to {0:.0f} mm from its middle", half);
}

}  // namespace swale
