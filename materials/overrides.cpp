#include "materials/overrides.h"

#include "materials/data_sheet.h"

#include <cmath>
#include <stdexcept>
#include <utility>

namespace swale {
namespace {

void require_positive(double value, const std::string& name) {
    if (value > 0 && std::isfinite(value)) return;
    throw std::invalid_argument(name + " of " + std::to_string(value) + " N/mm; it must be positive");
}

}  // namespace

void override_modulus(Belt& belt, double modulus) {
    require_positive(modulus, "modulus");
    DataSheet data = belt.data;
    // A12 = nu12 A22 has no A11 in it, so a constant nu12 leaves it as it is.
    put(data, datum("A11", modulus, {"given", "measured modulus, ISO 9856"}));
    Section section = belt.section;
    section.membrane(0, 0) = modulus;
    const std::string fault = why_not_positive_definite(section.membrane, "A");
    if (!fault.empty()) throw std::invalid_argument("modulus of " + std::to_string(modulus) + " N/mm: " + fault);
    belt.section = section;
    belt.data = std::move(data);
}

void override_rated_tension(Belt& belt, double tension) {
    require_positive(tension, "rated tension");
    belt.rated_tension = tension;
    put(belt.data, datum("rated_tension", tension, {"given", "rated tension of the case"}));
}

}  // namespace swale
