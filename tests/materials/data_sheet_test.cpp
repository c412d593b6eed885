#include "materials/data_sheet.h"

#include <doctest/doctest.h>
#include <stdexcept>

using namespace swale;

TEST_CASE("a data sheet prints the trade's units and gives internal ones back") {
    const DataSheet sheet{datum("D22", 25e3, {"given", "test"}), datum("mass", 16e-9, {"given", "test"})};
    CHECK(sheet[0].value == doctest::Approx(25));
    CHECK(sheet[0].unit == "N m");
    CHECK(sheet[1].value == doctest::Approx(16));
    CHECK(sheet[1].unit == "kg/m^2");
    CHECK(internal_value(sheet, "D22") == doctest::Approx(25e3));
    CHECK(internal_value(sheet, "mass") == doctest::Approx(16e-9));
}

TEST_CASE("a section is what its data sheet says") {
    DataSheet sheet;
    double value = 1;
    for (const char* name :
         {"A11", "A22", "A12", "A66", "D11", "D22", "D12", "D66", "thickness", "underside", "mass", "foundation"})
        sheet.push_back(datum(name, value++, {"given", "test"}));
    const Section section = section_of(sheet);
    CHECK(section.membrane.isApprox(orthotropic(1, 2, 3, 4)));
    CHECK(section.bending.isApprox(orthotropic(5, 6, 7, 8)));
    CHECK(section.thickness == doctest::Approx(9));
    CHECK(section.underside == doctest::Approx(10));
    CHECK(section.mass == doctest::Approx(11));
    CHECK(section.foundation == doctest::Approx(12));
}

TEST_CASE("put replaces the namesake and appends what is new") {
    DataSheet sheet{datum("A11", 1, {"derived", "test"})};
    put(sheet, datum("A11", 2, {"given", "test"}));
    put(sheet, datum("A22", 3, {"given", "test"}));
    REQUIRE(sheet.size() == 2);
    CHECK(internal_value(sheet, "A11") == 2);
    CHECK(sheet[0].origin.grade == "given");
}

TEST_CASE("unknown names and lacking entries are the programmer's slip") {
    CHECK_THROWS_AS(datum("A13", 1, {"given", "test"}), std::out_of_range);
    CHECK_THROWS_AS(section_of({}), std::out_of_range);
}
