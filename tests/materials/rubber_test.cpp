#include "materials/rubber.h"

#include <doctest/doctest.h>

using namespace swale;

TEST_CASE("modulus from hardness follows Gent") {
    // closed form of 1958, worked by hand to two figures
    CHECK(youngs_modulus(55) == doctest::Approx(2.97).epsilon(0.005));
    CHECK(youngs_modulus(60) == doctest::Approx(3.6).epsilon(0.005));
    CHECK(youngs_modulus(65) == doctest::Approx(4.4).epsilon(0.01));
    CHECK(youngs_modulus(70) == doctest::Approx(5.5).epsilon(0.01));
}

TEST_CASE("harder rubber is stiffer") {
    for (double hardness = 35; hardness < 90; hardness += 5) CHECK(youngs_modulus(hardness + 5) > youngs_modulus(hardness));
}

TEST_CASE("cover rubber has the shear modulus of conveyor rubbers") {
    // 0.8 to 1.5 MPa, from memory (fairly sure)
    CHECK(shear_modulus(youngs_modulus(cover_hardness)) > 0.8);
    CHECK(shear_modulus(youngs_modulus(cover_hardness)) < 1.5);
}

TEST_CASE("a thick layer yields like a free strip and a thin one is confined") {
    const double youngs = youngs_modulus(cover_hardness);
    CHECK(foundation_modulus(youngs, 100) == doctest::Approx(plane_strain_modulus(youngs) / 100).epsilon(1e-3));
    CHECK(foundation_modulus(youngs, 1) > 3 * plane_strain_modulus(youngs));
}

TEST_CASE("foundation of usual bottom covers lies between 1 and 5 N per mm3") {
    for (double layer : {2.5, 3.0, 4.0, 6.0}) {
        CHECK(foundation_modulus(youngs_modulus(cover_hardness), layer) > 1);
        CHECK(foundation_modulus(youngs_modulus(cover_hardness), layer) < 5);
    }
}
