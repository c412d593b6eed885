#include "io/measured_table.h"

#include "materials/contradictions.h"
#include "materials/data_sheet.h"
#include "materials/overrides.h"

#include <cmath>

namespace swale {
namespace {

constexpr Allowed modulus_range = {Kind::force_per_length, 1, 2e6};
constexpr Allowed elongation_range = {Kind::percentage, 0.01, 10};
constexpr Allowed rating_range = {Kind::force_per_length, 0.1, 20000};
constexpr Allowed mass_range = {Kind::mass_per_area, 1, 200};
constexpr Allowed thickness_range = {Kind::length, 1, 100};
constexpr Allowed width_range = {Kind::length, 100, 4000};

bool is_number(const std::optional<double>& value) {
    return value && !std::isnan(*value);
}

/// By the user's catalogue: a certificate's modulus goes before the secant of an elongation wherever either stands.
bool has_given_modulus(const Belt& belt) {
    return !belt.data.empty() && entry_of(belt.data, "A11").origin.grade == "given";
}

/// A measured value of a belt by designation; `in_section`: the key that stands for it in a section; `override_with` may throw
/// std::invalid_argument.
template <class Override>
void apply_measured(CaseTable& table, const char* key, const char* in_section, const std::optional<double>& value, Belt& belt,
                    const Override& override_with) {
    if (!value) return;
    if (table.has("section"))
        return table.reject(key, std::string("a measured ") + key + " overrides a designation's",
                            std::string(in_section) + " of [belt.section] in its place");
    if (std::isnan(*value) || belt.data.empty()) return;
    try {
        override_with(belt, *value);
    } catch (const std::invalid_argument& error) {
        table.reject(key, error.what(), "a value that this belt can have");
    }
}

}  // namespace

void read_measured(CaseTable& table, Belt& belt) {
    const Belt catalogue = belt;
    const std::optional<double> modulus = table.quantity("modulus", modulus_range);
    const std::optional<double> elongation = table.quantity("elongation_at_reference", elongation_range);
    const std::optional<double> rating = table.quantity("rated_tension", rating_range);
    const bool known = modulus || has_given_modulus(belt);
    apply_measured(table, "modulus", "A11", modulus, belt, override_modulus);
    apply_measured(table, "elongation_at_reference", "A11", elongation, belt, [&](Belt& stretched, double given) {
        known ? void(secant_modulus(stretched, given)) : override_elongation(stretched, given);
    });
    if (is_number(rating)) override_rated_tension(belt, *rating);
    apply_measured(table, "thickness", "thickness", table.quantity("thickness", thickness_range), belt, override_thickness);
    apply_measured(table, "mass", "mass", table.quantity("mass", mass_range), belt, override_mass);
    // After mass and width, which it depends on.
    const std::optional<double> troughability = table.number("troughability", 0.01, 0.44);
    const double tested = table.quantity("troughability_width", width_range).value_or(belt.width);
    if (table.has("troughability_width") && !table.has("troughability"))
        table.reject("troughability_width", "there is no troughability that it belongs to", "troughability, or leave it out");
    if (!std::isnan(tested))
        apply_measured(table, "troughability", "D22", troughability, belt,
                       [&](Belt& tested_belt, double ratio) { override_troughability(tested_belt, ratio, tested); });
    if (table.has("section") || catalogue.data.empty()) return;
    const bool both = known && is_number(elongation) && belt.strength;
    warn_of_contradictions(catalogue, both ? elongation : std::nullopt, belt);
}

}  // namespace swale
