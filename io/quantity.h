#pragma once

#include <stdexcept>
#include <string>

namespace swale {

/// Kinds of quantity, kept apart even where their dimensions agree: "35 %" is no angle, a joule is no bending stiffness.
///                      internal unit   in print
///   length             mm              mm
///   force              N               kN
///   force_per_length   N/mm            N/mm      tension, membrane stiffness, modulus
///   moment             N mm            N m       bending stiffness D: moment per width and curvature
///   mass_per_area      t/mm^2          kg/m^2
///   foundation         N/mm^3          N/mm^3    pressure per indentation
///   angle              rad             deg
///   percentage         1               %
///   density            t/mm^3          t/m^3     mass per volume of bulk
enum class Kind { length, force, force_per_length, moment, mass_per_area, foundation, angle, percentage, density };

/// A text that is no quantity of the kind wanted. The message says why, not where.
class BadQuantity : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Value in the internal unit of a text that is one finite number, blanks, one unit and nothing else: "1200 mm", "600 lbf/in".
/// The unit must be made of what the kind is made of (force and length for D) and convert to it. Throws BadQuantity.
double read_quantity(const std::string& text, Kind kind);

/// `value` in the unit of print as a value in the internal unit.
double from_print(double value, Kind kind);

/// "a length", "an angle", ... for messages.
std::string name_of(Kind kind);

/// Unit of print: "mm", "kN", ...
std::string print_unit(Kind kind);

/// A well-formed quantity of the kind, for messages: "1200 mm".
std::string example_of(Kind kind);

}  // namespace swale
