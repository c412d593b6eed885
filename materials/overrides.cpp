#include "materials/overrides.h"

#include "materials/data_sheet.h"
#include "materials/following.h"
#include "materials/rubber.h"
#include "materials/stiffness_share.h"
#include "materials/troughability.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace swale {
namespace {

void require_positive(double value, const std::string& name, const std::string& unit = "N/mm") {
    if (value > 0 && std::isfinite(value)) return;
    throw std::invalid_argument(fmt::format("{} of {} {}; it must be positive", name, value, unit));
}

// Three digits, and all before the point.
std::string digits(double value) {
    return value < 1000 ? fmt::format("{:.3g}", value) : fmt::format("{:.0f}", value);
}

// A12 = nu12 A22 has no A11 in it, so a constant nu12 leaves it as it is.
void put_modulus(Belt& belt, const BeltDatum& entry) {
    DataSheet sheet = following(belt, "A11", entry.value);
    put(sheet, entry);
    const Section section = section_of(sheet);
    const std::string fault = why_not_positive_definite(section.membrane, "A");
    if (!fault.empty()) throw std::invalid_argument(fmt::format("modulus of {} N/mm: {}", entry.value, fault));
    belt.section = section;
    belt.data = std::move(sheet);
}

// All rubber and no carcass across; and plies or cords that can't slide: A22 spread over the carcass and the covers as one
// sheet.
void warn_of_bounds(Belt& belt, double ratio, double across, double test_width) {
    const Section& section = belt.section;
    const double rubber = youngs_modulus(cover_hardness) * std::pow(section.thickness, 3) / 12;
    const double one_sheet = section.membrane(1, 1) * section.thickness * section.thickness / 12 + 4.0 / 3 * rubber;
    const auto warn = [&](const std::string& than, double bound) {
        belt.warnings.push_back(fmt::format(
            "the troughability {:.3g} means D22 = {} N m, {} {} N m: it contradicts the construction "
            "(thickness {:.3g} mm, {:.3g} kg/m^2, {:.0f} mm wide); check F/L, mass and width of the test",
            ratio, digits(across / 1e3), than, digits(bound / 1e3), section.thickness, section.mass * 1e9, test_width));
    };
    if (across < rubber / 2) warn("less than half of what rubber alone of this thickness has,", rubber);
    if (across > one_sheet) warn("more than a sheet of this thickness whose plies can't slide has,", one_sheet);
}

}  // namespace

void override_modulus(Belt& belt, double modulus) {
    require_positive(modulus, "modulus");
    put_modulus(belt, datum("A11", modulus, {"given", "measured modulus, ISO 9856"}));
}

double secant_modulus(const Belt& belt, double elongation) {
    if (!belt.strength) throw std::invalid_argument("the breaking strength of this belt is not known");
    if (!(elongation > 0)) throw std::invalid_argument("the elongation must be positive");
    return 0.1 * *belt.strength / elongation;
}

void override_elongation(Belt& belt, double elongation) {
    const double secant = secant_modulus(belt, elongation);
    const std::optional<Range>& former = entry_of(belt.data, "A11").range;
    const BeltDatum entry =
        datum("A11", secant,
              {"given",
               fmt::format("secant of a first loading, {:.3g} % at a tenth of the breaking strength (ISO 283): permanent and "
                           "thermal stretch are in it, the modulus of ISO 9856 is higher",
                           100 * elongation)});
    const bool open = former && former->high > secant;
    put_modulus(belt, open ? ranged(entry, secant, former->high, "that secant to the catalogue's high end") : entry);
}

void override_mass(Belt& belt, double mass) {
    require_positive(mass, "mass", "t/mm^2");
    belt.section.mass = mass;
    put(belt.data, datum("mass", mass, {"given", "measured mass of the case"}));
}

void set_compressive_stiffness(Belt& belt, double share) {
    if (!(share > 0 && share <= 1))
        throw std::invalid_argument(fmt::format("a compressive stiffness of {} A11; above 0, at most 1", share));
    belt.section.compression.share = share;
    put(belt.data, datum("compressive_stiffness", share, {"given", "share of A11, of the case"}));
}

void override_thickness(Belt& belt, double thickness) {
    require_positive(thickness, "thickness", "mm");
    belt.data = following(belt, "thickness", thickness);
    put(belt.data,
        datum("thickness", thickness,
              {"given",
               "measured thickness of the case; the covers are the designation's, the carcass has the rest (derived: "
               "it is what differs from maker to maker), and mass, A66 and D follow"}));
    belt.section = section_of(belt.data);
}

void override_troughability(Belt& belt, double ratio, double test_width) {
    const double across = stiffness_of_troughability(ratio, test_width, belt.section.mass);
    const Origin origin{"given",
                        fmt::format("measured troughability {:.3g}, ISO 703, by the heavy elastica at {:.3g} kg/m^2 and "
                                    "{:.0f} mm",
                                    ratio, belt.section.mass * 1e9, test_width)};
    scale_stiffness(belt.data, "D22", across / belt.section.bending(1, 1));
    put(belt.data, datum("D22", across, origin));
    belt.section.bending = section_of(belt.data).bending;
    warn_of_bounds(belt, ratio, across, test_width);
}

void override_rated_tension(Belt& belt, double tension) {
    require_positive(tension, "rated tension");
    belt.rated_tension = tension;
    put(belt.data, datum("rated_tension", tension, {"given", "rated tension of the case"}));
}

}  // namespace swale
