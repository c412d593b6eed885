#pragma once

#include <string>

namespace swale {

/// What a single unit measures. The library itself calls degrees, per cent and plain numbers convertible, so angle and ratio
/// are told apart by name.
enum class Measure { length, force, mass, pressure, angle, ratio, other, unknown };

/// What one unit symbol or name measures, as UDUNITS-2 knows it ("kN", "inch", "degree").
Measure measure_of(const std::string& symbol);

/// `value` of the unit `from` in the unit `to`; both in the library's own notation ("N.mm-1") and convertible.
double convert(double value, const std::string& from, const std::string& to);

}  // namespace swale
