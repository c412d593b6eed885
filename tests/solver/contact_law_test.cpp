#include "solver/contact/contact_law.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

using namespace swale;

namespace {

const ContactLaw law{2.5, 0.04};

}  // namespace

TEST_CASE("contact law: beyond the corner nothing presses and well below it the foundation is linear") {
    CHECK(law.energy(0.04) == 0);
    CHECK(law.pressure(0.05) == 0);
    CHECK(law.stiffness(0.05) == 0);
    CHECK(law.pressure(-0.3) == doctest::Approx(2.5 * 0.3));
    CHECK(law.stiffness(-0.3) == 2.5);
}

TEST_CASE("contact law: the pressure is minus the derivative of the energy and the stiffness that of the pressure") {
    const double h = 1e-5;
    for (const double gap : {-0.5, -0.07, -0.03, -0.001, 0.0, 0.02, 0.039, 0.1}) {
        CAPTURE(gap);
        CHECK(std::abs((law.energy(gap - h) - law.energy(gap + h)) / (2 * h) - law.pressure(gap)) < 1e-8);
        CHECK(std::abs((law.pressure(gap - h) - law.pressure(gap + h)) / (2 * h) - law.stiffness(gap)) < 1e-8);
    }
}

TEST_CASE("contact law: energy and pressure and stiffness run on over both ends of the corner") {
    const double tiny = 1e-10;
    for (const double end : {-law.corner, law.corner}) {
        CHECK(std::abs(law.energy(end + tiny) - law.energy(end - tiny)) < 1e-9);
        CHECK(std::abs(law.pressure(end + tiny) - law.pressure(end - tiny)) < 1e-8);
        CHECK(std::abs(law.stiffness(end + tiny) - law.stiffness(end - tiny)) < 1e-7);
    }
}
