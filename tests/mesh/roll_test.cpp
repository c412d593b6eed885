#include "mesh/roll.h"

#include <doctest/doctest.h>
#include <Eigen/Geometry>

#include <cmath>
#include <vector>

using namespace swale;

namespace {

/// A wing roll in a general position.
Roll tilted_roll() {
    Roll roll;
    roll.centre = {300, -120, 40};
    roll.axis = Eigen::Vector3d(0.1, 0.8, 0.55).normalized();
    roll.up = roll.axis.cross(Eigen::Vector3d::UnitX()).normalized();
    roll.radius = 76;
    roll.half_length = 230;
    roll.end_radius = 12;
    return roll;
}

/// Point at distance s along the axis and rho from it.
Eigen::Vector3d point_at(const Roll& roll, double s, double rho, double turn = 0.3) {
    const Eigen::Vector3d side = roll.axis.cross(roll.up);
    return roll.centre + s * roll.axis + rho * (std::cos(turn) * roll.up + std::sin(turn) * side);
}

struct Place {
    const char* name;
    double s, rho;
};

const Place places[] = {{"barrel outside", 40, 81},      {"barrel inside", -170, 73}, {"rounded end outside", 231, 78},
                        {"rounded end inside", 222, 70}, {"other end", -226, 72},     {"end face", 233, 30}};

}  // namespace

TEST_CASE("roll: the clearance is the distance to barrel, rounded end and end face") {
    const Roll roll = tilted_roll();
    CHECK(roll.clearance(point_at(roll, 100, 80)).distance == doctest::Approx(4));
    CHECK(roll.clearance(point_at(roll, -100, 75)).distance == doctest::Approx(-1));
    CHECK(roll.clearance(point_at(roll, 237, 20)).distance == doctest::Approx(7));
    // The centre of the end's rounding is at s = 218, rho = 64.
    CHECK(roll.clearance(point_at(roll, 218 + 12, 64 + 16)).distance == doctest::Approx(20 - 12));
}

TEST_CASE("roll: the normal is the gradient of the distance and the curvature its Hessian") {
    const Roll roll = tilted_roll();
    const double h = 1e-3;
    for (const auto& [name, s, rho] : places) {
        CAPTURE(name);
        const Eigen::Vector3d point = point_at(roll, s, rho);
        const Clearance here = roll.clearance(point);
        CHECK(here.normal.norm() == doctest::Approx(1).epsilon(1e-14));
        for (int c = 0; c < 3; ++c) {
            const Eigen::Vector3d step = h * Eigen::Vector3d::Unit(c);
            const Clearance before = roll.clearance(point - step), behind = roll.clearance(point + step);
            CHECK(std::abs((behind.distance - before.distance) / (2 * h) - here.normal[c]) < 1e-8);
            CHECK(((behind.normal - before.normal) / (2 * h) - here.curvature.col(c)).norm() < 1e-8);
        }
    }
}

TEST_CASE("roll: distance and normal run on from barrel over the rounded end to the end face") {
    const Roll roll = tilted_roll();
    const double tiny = 1e-9;
    const Eigen::Vector3d to_end = roll.axis, outward = point_at(roll, 0, 1) - roll.centre;
    for (const auto& [where, across] :
         {std::pair(point_at(roll, 218, 79), to_end), std::pair(point_at(roll, 233, 64), outward)}) {
        const Clearance before = roll.clearance(where - tiny * across), behind = roll.clearance(where + tiny * across);
        CHECK(std::abs(behind.distance - before.distance) < 1e-8);
        CHECK((behind.normal - before.normal).norm() < 1e-8);
    }
}

TEST_CASE("roll: points on the axis have a finite distance and a unit normal") {
    const Roll roll = tilted_roll();
    const Clearance clearance = roll.clearance(roll.centre);
    CHECK(clearance.distance == doctest::Approx(-76));
    CHECK(clearance.normal.norm() == doctest::Approx(1));
}
