#include "io/quantity.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace swale {
namespace {

struct Good {
    const char* text;
    Kind kind;
    double internal;
};

// Conversion factors by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s^2 (all exact).
constexpr double inch = 25.4;                            // [mm]
constexpr double pound_mass = 0.45359237e-3;             // [t]
constexpr double pound_force = 0.45359237 * 9.80665;     // [N]
constexpr double degree = 3.14159265358979323846 / 180;  // [rad]

const std::vector<Good> good = {
    {"1200 mm", Kind::length, 1200},
    {"1.2 m", Kind::length, 1200},
    {"48 in", Kind::length, 48 * inch},
    {"48 inches", Kind::length, 48 * inch},
    {"4 ft", Kind::length, 48 * inch},
    {"-3.5e1 mm", Kind::length, -35},
    {"+2\tmm", Kind::length, 2},
    {".5 in", Kind::length, inch / 2},
    {"500 \u00B5m", Kind::length, 0.5},
    {"45 kN", Kind::force, 45000},
    {"10 kip", Kind::force, 10000 * pound_force},
    {"100 kgf", Kind::force, 980.665},
    {"100 kp", Kind::force, 980.665},
    {"25 kN/m", Kind::force_per_length, 25},
    {"600 lbf/in", Kind::force_per_length, 600 * pound_force / inch},
    {"440 piw", Kind::force_per_length, 440 * pound_force / inch},
    {"440 pli", Kind::force_per_length, 440 * pound_force / inch},
    {"25 N mm^-1", Kind::force_per_length, 25},
    {"800 MPa mm", Kind::force_per_length, 800},
    {"70 N m", Kind::moment, 70000},
    {"70 N.m", Kind::moment, 70000},
    {"70 N*m", Kind::moment, 70000},
    {"70 N\u00B7m", Kind::moment, 70000},
    {"70000 N mm", Kind::moment, 70000},
    {"70 N m^2/m", Kind::moment, 70000},
    {"620 lbf in", Kind::moment, 620 * pound_force* inch},
    {"16 kg/m^2", Kind::mass_per_area, 16e-9},
    {"16 kg/m2", Kind::mass_per_area, 16e-9},
    {"16 kg/m\u00B2", Kind::mass_per_area, 16e-9},
    {"3.3 lb/ft^2", Kind::mass_per_area, 3.3 * pound_mass / (144 * inch * inch)},
    {"1.2 t/m^3", Kind::density, 1.2e-9},
    {"75 lb/ft^3", Kind::density, 75 * pound_mass / (1728 * inch * inch * inch)},
    {"2 N/mm^3", Kind::foundation, 2},
    {"2 MPa/mm", Kind::foundation, 2},
    {"7 lbf/in^3", Kind::foundation, 7 * pound_force / (inch * inch * inch)},
    {"300 psi/in", Kind::foundation, 300 * pound_force / (inch * inch * inch)},
    {"35 deg", Kind::angle, 35 * degree},
    {"35 degrees", Kind::angle, 35 * degree},
    {"35 \u00B0", Kind::angle, 35 * degree},
    {"0.6 rad", Kind::angle, 0.6},
    {"0.8 %", Kind::percentage, 0.008},
    {"0.8 percent", Kind::percentage, 0.008},
};

struct Bad {
    const char* text;
    Kind kind;
    const char* phrase;
};

const std::vector<Bad> bad = {
    {"", Kind::length, "not a finite decimal number"},
    {"5", Kind::length, "no unit"},
    {"5 ", Kind::length, "no unit"},
    {"mm", Kind::length, "not a finite decimal number"},
    {" 5 mm", Kind::length, "not a finite decimal number"},
    {"5 mm ", Kind::length, "can't be read"},
    {"5\nmm", Kind::length, "not a finite decimal number"},
    {"12mm", Kind::length, "not a finite decimal number"},
    {"2 3 mm", Kind::length, "can't be read"},
    {"1 200 mm", Kind::length, "can't be read"},
    {"12,5 mm", Kind::length, "not a finite decimal number"},
    {"1_200 mm", Kind::length, "not a finite decimal number"},
    {"0x10 mm", Kind::length, "not a finite decimal number"},
    {"nan mm", Kind::length, "not a finite decimal number"},
    {"inf mm", Kind::length, "not a finite decimal number"},
    {"-inf mm", Kind::length, "not a finite decimal number"},
    {"+-5 mm", Kind::length, "not a finite decimal number"},
    {"1e mm", Kind::length, "not a finite decimal number"},
    {"1e400 mm", Kind::length, "beyond"},
    {"1e308 km", Kind::length, "beyond"},
    {"1200 mmm", Kind::length, "not known"},
    {"1200 MM", Kind::length, "not known"},
    {"1200 kg", Kind::length, "not the unit of a length"},
    {"1200 mm^2", Kind::length, "not the unit of a length"},
    {"5 mm s", Kind::length, "no place here"},
    {"5 mm mm/", Kind::length, "can't be read"},
    {"5 mm^", Kind::length, "lacks a power"},
    {"5 (mm)", Kind::length, "can't be read"},
    {"5 mm @ 3", Kind::length, "can't be read"},
    {"45 kN @ 3", Kind::force, "can't be read"},
    {"45 kN since 1970", Kind::force, "can't be read"},
    {"45 lb", Kind::force, "lbf"},
    {"45 kg", Kind::force, "lbf"},
    {"25 kg/s^2", Kind::force_per_length, "no place here"},
    {"600 lb/in", Kind::force_per_length, "lbf"},
    {"25 MPa", Kind::force_per_length, "not the unit"},
    {"70 J", Kind::moment, "no place here"},
    {"70 N m/m", Kind::moment, "not the unit of a moment"},
    {"70 N", Kind::moment, "not the unit of a moment"},
    {"16 kg", Kind::mass_per_area, "not the unit"},
    {"16 N/m^2", Kind::mass_per_area, "not the unit"},
    {"2 N/mm^2", Kind::foundation, "not the unit"},
    {"35 %", Kind::angle, "not the unit of an angle"},
    {"35 deg", Kind::percentage, "not the unit of a percentage"},
    {"0.6 rad", Kind::percentage, "not the unit of a percentage"},
    {"35 1", Kind::angle, "can't be read"},
    {"35 deg^2", Kind::angle, "not the unit of an angle"},
    {"0.8 mm/mm", Kind::percentage, "not the unit of a percentage"},
};

std::string complaint(const std::string& text, Kind kind) {
    try {
        read_quantity(text, kind);
    } catch (const BadQuantity& error) {
        return error.what();
    }
    return "no complaint";
}

}  // namespace

TEST_CASE("a number with a unit of its kind converts to the internal unit") {
    for (const Good& row : good) {
        CAPTURE(std::string(row.text));
        CHECK(read_quantity(row.text, row.kind) == doctest::Approx(row.internal).epsilon(1e-12));
    }
}

TEST_CASE("whatever is not one number and one unit of its kind is refused with the reason") {
    for (const Bad& row : bad) {
        CAPTURE(std::string(row.text));
        const std::string why = complaint(row.text, row.kind);
        CAPTURE(why);
        CHECK(why.find(row.phrase) != std::string::npos);
    }
}

TEST_CASE("every kind reads its own example and no other kind's") {
    for (int i = 0; i < 8; ++i)
        for (int j = 0; j < 8; ++j) {
            const bool readable = complaint(example_of(static_cast<Kind>(i)), static_cast<Kind>(j)) == "no complaint";
            CHECK(readable == (i == j));
        }
}

TEST_CASE("a value in the unit of print means the same as the text that a person would write") {
    CHECK(from_print(35, Kind::angle) == read_quantity("35 deg", Kind::angle));
    CHECK(from_print(45, Kind::force) == read_quantity("45 kN", Kind::force));
    CHECK(from_print(70, Kind::moment) == read_quantity("70 N m", Kind::moment));
}

}  // namespace swale
