#include "materials/contradictions.h"

#include "materials/data_sheet.h"
#include "materials/overrides.h"

#include <fmt/core.h>

#include <string>

namespace swale {
namespace {

/// Beyond the range of a construction by this factor a value is no longer scatter: common practice.
constexpr double scatter = 1.25;
/// Where no range is known, published rows of steel cord agree this well.
constexpr double published_scatter = 0.1;
/// Highest modulus of ISO 9856 over the secant of ISO 283 that is still likely: EP belts have 1 to 2.4 (7 to 12 x strength
/// against 1.5 to 2 % at a tenth of it: belt certificates, 2020; a belt maker's catalogue of fabric belts, 2012).
constexpr double highest_over_secant = 3;
/// Densities [t/mm^3] between which every belt lies: rubber 1.13 (belt makers' catalogues, 2012), less voids; the densest
/// carcass of steel cord 3.3 (a catalogue of steel-cord belts, 2012).
constexpr double lightest_belt = 1.0e-9, heaviest_textile = 1.6e-9, heaviest_belt = 3.3e-9;
/// Breaking strength over rated tension: 10 textile, 6.67 steel cord are usual (belt makers' tables).
constexpr double least_safety = 5, most_safety = 20;

bool is_given(const Belt& belt, const std::string& name) {
    return entry_of(belt.data, name).origin.grade == "given";
}

void warn_of_construction(const Belt& catalogue, const std::string& name, const std::string& called, Belt& belt) {
    const BeltDatum &usual = entry_of(catalogue.data, name), &given = entry_of(belt.data, name);
    const double low = usual.range ? usual.range->low : (1 - published_scatter) * usual.value;
    const double high = usual.range ? usual.range->high : (1 + published_scatter) * usual.value;
    if (!is_given(belt, name) || (given.value >= low / scatter && given.value <= high * scatter)) return;
    belt.warnings.push_back(
        fmt::format("{} of {:.7g} {}: belts of this construction have {:.7g} to {:.7g}; check the designation and "
                    "the unit of the certificate",
                    called, given.value, given.unit, low, high));
}

void warn_of_secant(double elongation, Belt& belt) {
    const double secant = secant_modulus(belt, elongation), modulus = belt.section.membrane(0, 0);
    const std::string both = fmt::format(
        "modulus of {:.0f} N/mm and elongation of {:.3g} % at a tenth of the breaking strength", modulus, 100 * elongation);
    if (modulus < secant)
        belt.warnings.push_back(
            fmt::format("{} contradict each other: the elongation means a secant of {:.0f} N/mm, and since permanent "
                        "stretch is in it the modulus of ISO 9856 can't be lower",
                        both, secant));
    if (modulus > highest_over_secant * secant)
        belt.warnings.push_back(
            fmt::format("{} contradict each other: the modulus is {:.1f} times the secant of {:.0f} N/mm that the "
                        "elongation means, where 1 to {:.0f} is usual",
                        both, modulus / secant, secant, highest_over_secant));
}

void warn_of_density(Belt& belt) {
    if (!is_given(belt, "mass") && !is_given(belt, "thickness")) return;
    const double density = belt.section.mass / belt.section.thickness;
    const double heaviest = belt.carcass == Carcass::steel_cord ? heaviest_belt : heaviest_textile;
    if (density >= lightest_belt && density <= heaviest) return;
    belt.warnings.push_back(
        fmt::format("{:.3g} kg/m^2 and {:.3g} mm mean {:.2f} g/cm^3: such belts have {:.1f} to {:.1f}; check mass and "
                    "thickness",
                    belt.section.mass * 1e9, belt.section.thickness, density * 1e9, lightest_belt * 1e9, heaviest * 1e9));
}

void warn_of_rating(Belt& belt) {
    if (!belt.strength || !belt.rated_tension || !is_given(belt, "rated_tension")) return;
    const double safety = *belt.strength / *belt.rated_tension;
    if (safety >= least_safety && safety <= most_safety) return;
    belt.warnings.push_back(
        fmt::format("rated tension of {:.6g} N/mm is the breaking strength of {:.0f} N/mm over {:.1f}, where 6.7 to 10 is "
                    "usual; check its unit",
                    *belt.rated_tension, *belt.strength, safety));
}

}  // namespace

void warn_of_contradictions(const Belt& catalogue, std::optional<double> elongation, Belt& belt) {
    warn_of_construction(catalogue, "A11", "modulus", belt);
    warn_of_construction(catalogue, "thickness", "thickness", belt);
    if (elongation) warn_of_secant(*elongation, belt);
    warn_of_density(belt);
    warn_of_rating(belt);
}

}  // namespace swale
