#include "io/quantity.h"

#include "io/unit_library.h"
#include "io/unit_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace swale {
namespace {

/// What a unit is made of: powers of force, length, mass, angle and ratio. A pressure counts as force per length squared.
using Composition = std::array<int, 5>;

struct KindFacts {
    const char* name;
    const char* internal;  // in the unit library's notation
    const char* print;
    const char* example;
    Composition composition;
};

const KindFacts& facts(Kind kind) {
    static const std::array<KindFacts, 9> table = {{{"a length", "mm", "mm", "1200 mm", {0, 1}},
                                                    {"a force", "N", "kN", "45 kN", {1}},
                                                    {"a force per length", "N.mm-1", "N/mm", "25 N/mm", {1, -1}},
                                                    {"a moment", "N.mm", "N m", "70 N m", {1, 1}},
                                                    {"a mass per area", "t.mm-2", "kg/m^2", "16 kg/m^2", {0, -2, 1}},
                                                    {"a pressure per length", "N.mm-3", "N/mm^3", "2 N/mm^3", {1, -3}},
                                                    {"an angle", "rad", "deg", "35 deg", {0, 0, 0, 1}},
                                                    {"a percentage", "1", "%", "0.8 %", {0, 0, 0, 0, 1}},
                                                    {"a density", "t.mm-3", "t/m^3", "1.2 t/m^3", {0, -3, 1}}}};
    return table.at(static_cast<std::size_t>(kind));
}

Composition composition_of(const UnitFactor& factor) {
    const int n = factor.power;
    switch (measure_of(factor.symbol)) {
        case Measure::force:
            return {n};
        case Measure::length:
            return {0, n};
        case Measure::pressure:
            return {n, -2 * n};
        case Measure::mass:
            return {0, 0, n};
        case Measure::angle:
            return {0, 0, 0, n};
        case Measure::ratio:
            return {0, 0, 0, 0, n};
        case Measure::other:
            throw BadQuantity("the unit \"" + factor.symbol + "\" has no place here");
        case Measure::unknown:
            break;
    }
    throw BadQuantity("the unit \"" + factor.symbol + "\" is not known");
}

Composition composition_of(const UnitFactors& factors) {
    Composition sum = {};
    for (const UnitFactor& factor : factors) {
        const Composition part = composition_of(factor);
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += part[i];
    }
    return sum;
}

/// The trade says pounds and means a force.
bool mass_for_force(const Composition& given, const Composition& wanted) {
    return given[2] == 1 && wanted[0] == 1 && given[1] == wanted[1];
}

/// The unit in the library's notation, if it is made of what the kind is made of.
std::string unit_of_kind(const std::string& unit, Kind kind) {
    const UnitFactors factors = split_unit(unit);
    const Composition given = composition_of(factors);
    const KindFacts& wanted = facts(kind);
    if (given == wanted.composition) return join_unit(factors);
    const char* hint = mass_for_force(given, wanted.composition) ? "; a force is written N, lbf or kgf" : "";
    throw BadQuantity("\"" + unit + "\" is not the unit of " + wanted.name + hint);
}

double read_number(const std::string& text) {
    double value = 0;
    const char* start = text.data() + (text.starts_with('+') ? 1 : 0);
    const char* end = text.data() + text.size();
    const bool plain = text.find_first_not_of("0123456789+-.eE") == std::string::npos && !text.starts_with("+-");
    const auto [stop, error] = std::from_chars(start, end, value);
    if (error == std::errc::result_out_of_range) throw BadQuantity("the number \"" + text + "\" is beyond what can be held");
    if (!plain || error != std::errc() || stop != end) throw BadQuantity("\"" + text + "\" is not a finite decimal number");
    return value;
}

constexpr const char* blanks = " \t";

}  // namespace

double read_quantity(const std::string& text, Kind kind) {
    const std::size_t number_end = std::min(text.find_first_of(blanks), text.size());
    const std::size_t unit_start = text.find_first_not_of(blanks, number_end);
    const double value = read_number(text.substr(0, number_end));
    if (unit_start == std::string::npos) throw BadQuantity("there is no unit after the number");
    const std::string unit = unit_of_kind(text.substr(unit_start), kind);
    const double internal = convert(value, unit, facts(kind).internal);
    if (!std::isfinite(internal)) throw BadQuantity("the number is beyond what can be held");
    return internal;
}

double from_print(double value, Kind kind) {
    return convert(value, unit_of_kind(facts(kind).print, kind), facts(kind).internal);
}

std::string name_of(Kind kind) {
    return facts(kind).name;
}
std::string print_unit(Kind kind) {
    return facts(kind).print;
}
std::string example_of(Kind kind) {
    return facts(kind).example;
}

}  // namespace swale
