#pragma once

#include <array>

namespace swale {

struct Colour {
    unsigned char red = 0, green = 0, blue = 0;
};

/// From the lowest value to the highest in even steps.
using ColourTable = std::array<Colour, 256>;

/// The colours of all pictures besides those of fields.
namespace ink {
inline constexpr Colour text = {29, 42, 51};
inline constexpr Colour quiet = {92, 104, 112};   ///< axes, remarks
inline constexpr Colour faint = {214, 218, 216};  ///< grid lines
inline constexpr Colour accent = {11, 94, 107};
inline constexpr Colour alarm = {163, 38, 31};    ///< limits
inline constexpr Colour steel = {150, 158, 164};  ///< rolls and pulley
inline constexpr Colour paper = {255, 255, 255};
}  // namespace ink

/// How values become colours: `count` bands of equal height from `low` to `high`, beyond them the colour of the end.
struct ColourScale {
    double low = 0, high = 1;
    const ColourTable* table = nullptr;
    int bands = 12;

    Colour at(double value) const;
    double boundary(int band) const { return low + (high - low) * band / bands; }
};

/// The scale for a field from `low` to `high`, widened to boundaries that are round numbers. `both_signs`: zero in the middle.
ColourScale colour_scale(double low, double high, bool both_signs);

}  // namespace swale
