#include "materials/section.h"

#include "tests/materials/message_of.h"

#include <doctest/doctest.h>
#include <Eigen/Eigenvalues>

using namespace swale;

TEST_CASE("an orthotropic law is symmetric and does not couple stretch with shear") {
    const Eigen::Matrix3d law = orthotropic(8000, 2500, 500, 400);
    CHECK(law == law.transpose());
    CHECK(law(0, 1) == 500);
    CHECK(law(2, 2) == 400);
    CHECK(law(0, 2) == 0);
    CHECK(law(1, 2) == 0);
}

TEST_CASE("the sentence on positive definiteness agrees with the eigenvalues") {
    for (double along : {-1.0, 4.0})
        for (double across : {0.0, 9.0})
            for (double coupling : {-6.1, -5.9, 0.0, 5.9, 6.1})
                for (double shear : {-1.0, 1.0}) {
                    const Eigen::Matrix3d law = orthotropic(along, across, coupling, shear);
                    const double lowest = Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(law).eigenvalues()(0);
                    CHECK(why_not_positive_definite(law, "A").empty() == (lowest > 0));
                }
}

TEST_CASE("the sentence names the constant that is wrong") {
    CHECK(contains(why_not_positive_definite(orthotropic(1, 1, 0, -2), "D"), "D66 = -2"));
    CHECK(contains(why_not_positive_definite(orthotropic(4, 9, 7, 1), "A"), "sqrt(A11 A22) = 6"));
}

TEST_CASE("the farther face is above or below the mid-surface") {
    Section section;
    section.thickness = 14;
    section.underside = 5.5;
    CHECK(section.farther_face() == 8.5);
    section.underside = 9;
    CHECK(section.farther_face() == 9);
}
