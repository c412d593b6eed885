#include "solver/contact/contact_energy.h"

#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace swale;
using namespace swale::term_checks;

namespace {

const Patch patch{CubicBasis({0, 8, 12, 30}), CubicBasis({-10, 0, 6})};
const ContactWindow everywhere{0, 30, -10, 6};
constexpr double underside = 2;

/// Below the patch; the half-length decides whether its end is under the belt.
Roll roll_below(double half_length) {
    Roll roll;
    roll.axis = Eigen::Vector3d(0.15, 1, 0.1).normalized();
    roll.up = Eigen::Vector3d::UnitX().cross(roll.axis).normalized();
    roll.centre = Eigen::Vector3d(14, -20, -52);
    roll.radius = 50;
    roll.half_length = half_length;
    roll.end_radius = 8;
    return roll;
}

ContactEnergy contact_with(double half_length, double corner = 0.02) {
    return {patch, roll_below(half_length), ContactLaw{3, corner}, underside, everywhere};
}

/// A wavy belt that lies `depth` deeper than flat on the roll's top.
ControlPoints pressed(double depth, unsigned seed) {
    const ControlPoints flat = patch.follow([&](double x, double y) { return Eigen::Vector3d(x, y, -depth); });
    return flat + 0.3 * scatter(patch, seed);
}

}  // namespace

TEST_CASE("contact: gradient and tangent are derivatives on the barrel of a roll") {
    const ContactEnergy contact = contact_with(60);
    for (unsigned seed = 0; seed < 4; ++seed) {
        CHECK(gradient_error(contact, pressed(3, seed), 1e-4) < 1e-8);
        CHECK(tangent_error(contact, pressed(3, seed), 1e-4) < 1e-7);
    }
}

TEST_CASE("contact: gradient and tangent are derivatives over the rounded end of a roll") {
    const ContactEnergy contact = contact_with(26);
    for (unsigned seed = 0; seed < 4; ++seed) {
        CHECK(gradient_error(contact, pressed(4, seed), 1e-4) < 1e-8);
        CHECK(tangent_error(contact, pressed(4, seed), 1e-4) < 1e-7);
    }
}

TEST_CASE("contact: gradient and tangent are derivatives in the rounded corner of the law") {
    const ContactEnergy contact = contact_with(60, 5);  // so wide that every point that presses is in it
    for (unsigned seed = 0; seed < 4; ++seed) {
        CHECK(gradient_error(contact, pressed(0, seed), 1e-4) < 1e-8);
        CHECK(tangent_error(contact, pressed(0, seed), 1e-4) < 1e-7);
    }
}

TEST_CASE("contact: a belt above the rolls has neither energy nor forces and a positive gap") {
    const ContactEnergy contact = contact_with(60);
    const ControlPoints lifted = pressed(-4, 1);
    CHECK(contact.energy(lifted) == 0);
    CHECK(gradient_of(contact, lifted).norm() == 0);
    CHECK(contact.force(lifted).norm() == 0);
    CHECK(contact.smallest_gap(lifted) > 0);
}

TEST_CASE("contact: the force on the belt is what the gradient takes up") {
    const ContactEnergy contact = contact_with(60);
    const ControlPoints points = pressed(3, 2);
    const Eigen::Vector3d force = contact.force(points);
    CHECK((force + gradient_of(contact, points).rowwise().sum()).norm() < 1e-11 * force.norm());
    CHECK(force.z() > 0);
}

TEST_CASE("contact: without friction the force on the barrel is square to the axis") {
    const Eigen::Vector3d force = contact_with(60).force(pressed(3, 2));
    CHECK(std::abs(force.dot(roll_below(60).axis)) < 1e-12 * force.norm());
}

TEST_CASE("contact: line forces times their width add up to the force of a flat stamp") {
    Roll roll;
    roll.centre = {14, 0, -1e6};
    roll.radius = 1e6 - underside + 0.5;  // flat to the eye and 0.5 mm too high
    roll.half_length = 2000;
    const ContactEnergy contact(patch, roll, ContactLaw{3}, underside, everywhere);
    const ControlPoints flat = patch.follow([](double x, double y) { return Eigen::Vector3d(x, y, 0); });
    CHECK(contact.force(flat).z() == doctest::Approx(3 * 0.5 * 30 * 16).epsilon(1e-3));
    for (const auto& [y, per_width] : contact.line_force(flat)) CHECK(per_width == doctest::Approx(3 * 0.5 * 30).epsilon(1e-3));
    CHECK(contact.pressure_at({14, 0, 0}) == doctest::Approx(1.5));
}

TEST_CASE("contact: spans outside the window do not press") {
    const ContactEnergy narrow(patch, roll_below(60), ContactLaw{3}, underside, {1, 7, -10, -1});
    ControlPoints forces = gradient_of(narrow, pressed(3, 1));
    CHECK(forces.norm() > 0);
    CHECK(forces.col(patch.index(5, 2)).norm() == 0);
    CHECK(forces.col(patch.index(1, 4)).norm() == 0);
    CHECK(narrow.line_force(pressed(3, 1)).size() == 4);
}

TEST_CASE("contact: spans passed over because they are out of reach hold no point that presses") {
    // The plain twin: every point of the rule, whole matrices.
    const LineRule along = gauss_rule(patch.along, 6), across = gauss_rule(patch.across, 4);
    const ContactLaw law{3};
    for (const double half_length : {60.0, 26.0})
        for (const double depth : {-3.0, -1.0, 0.0, 1.0, 4.0}) {
            const ControlPoints points = pressed(depth, 3);
            const Roll roll = roll_below(half_length);
            double energy = 0;
            Eigen::MatrixXd tangent = Eigen::MatrixXd::Zero(points.size(), points.size());
            for (const LinePoint& px : along.points)
                for (const LinePoint& py : across.points) {
                    const Clearance clearance = roll.clearance(patch.jet(points, px.position, py.position).position);
                    const double gap = clearance.distance - underside, area = px.weight * py.weight;
                    energy += area * law.energy(gap);
                    const Eigen::Matrix3d C = area * (law.stiffness(gap) * clearance.normal * clearance.normal.transpose() -
                                                      law.pressure(gap) * clearance.curvature);
                    const SpanNodes nodes = patch.nodes(px.basis.first, py.basis.first);
                    for (int a = 0; a < 16; ++a)
                        for (int b = 0; b < 16; ++b)
                            tangent.block<3, 3>(3 * nodes[a], 3 * nodes[b]) += px.basis.value[a / 4] * py.basis.value[a % 4] *
                                                                               px.basis.value[b / 4] * py.basis.value[b % 4] *
                                                                               C;
                }
            const ContactEnergy contact = contact_with(half_length);
            CHECK(contact.energy(points) == doctest::Approx(energy).epsilon(1e-11));
            CHECK((dense_tangent(contact, points) - tangent).norm() <= 1e-11 * tangent.norm());
        }
}
