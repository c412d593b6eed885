#include "mesh/belt_grid.h"
#include "mesh/quadrature.h"
#include "mesh/trough_profile.h"
#include "solver/transition/grid_solution.h"
#include "solver/transition/start_surface.h"
#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <numbers>

// Straight strips from the pulley line to the trough: what every hand method assumes. A shell does the same in their limit: no
// bending stiffness, a small trough angle, a distance far beyond the shear lag W sqrt(A11/A66)/(2 pi), read half way.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double width = 1200, modulus = 8000, mean_strain = 1e-3;

TransitionCase held_between_lines(double angle, double distance, double lift) {
    TransitionCase strip;
    strip.belt.width = strip.layout.belt_width = width;
    Section& section = strip.belt.section;
    section.thickness = 10;
    section.underside = 5;
    section.membrane = orthotropic(modulus, 2500, 0, 4000);
    section.bending = orthotropic(1, 1, 0, 0.5);
    strip.layout.pulley.diameter = 630;
    strip.layout.pulley.support = Support::held;
    strip.layout.pulley.lift = lift;
    Trough& trough = strip.layout.trough;
    trough.angle = angle * std::numbers::pi / 180;
    trough.support = Support::held;
    trough.flat_width = 475;
    trough.junction_radius = 150;
    trough.sets = 1;
    strip.layout.distance = distance;
    strip.states = {{"drawn", {}, mean_strain * distance}};
    return strip;
}

// Strain across at half distance, at y.
std::function<double(double)> solved_strain(const TransitionCase& strip) {
    const double underside = strip.belt.section.underside;
    const GridTask task{strip, strip.states[0], 1, belt_grid(strip.layout, {1, underside, 1, true}), 1, "grid", 1e-9};
    const StartSurface start(strip.layout, 1, underside);
    NewtonTimes times;
    const auto drawn = [&](const Patch& patch) {
        return patch.follow([&](double x, double y) {
            Eigen::Vector3d place = start.at(x, y);
            place.x() *= 1 + mean_strain;
            return place;
        });
    };
    const auto solution = std::make_shared<GridSolution>(solve_grid(task, drawn, {}, times));
    REQUIRE_MESSAGE(solution->converged, solution->sentence);
    return [solution, x = strip.layout.distance / 2](double y) {
        return solution->model.patch.jet(solution->points, x, y).along.norm() - 1;
    };
}

// Strip y runs straight from (y, lift) on the pulley to its place in the trough: it is longer than L by |offset|^2 / 2L.
std::function<double(double)> strip_strain(const TransitionCase& strip) {
    const TransitionLayout& layout = strip.layout;
    const TroughProfile profile = held_profile(layout, strip.belt.section.underside);
    return [=](double y) {
        const Eigen::Vector2d offset = profile.at(y) - Eigen::Vector2d(y, layout.pulley.lift);
        return mean_strain + offset.squaredNorm() / (2 * layout.distance * layout.distance);
    };
}

double mean_over_width(const std::function<double(double)>& strain) {
    double sum = 0;
    for (const LinePoint& place : gauss_rule(CubicBasis({0, width / 4, width / 2}), 8).points)
        sum += place.weight * strain(place.position);
    return sum / (width / 2);
}

Reference straight(double value, const std::string& conditions) {
    return {value,
            "-",
            "straight strips, derived here: offset^2 / (2 L^2) less its mean over the width",
            Kind::closed_form,
            conditions,
            0.01,
            "wings turn by angle^2/24 = 0.13 % more than straight ones, shear lag and slopes of the wing"};
}

}  // namespace

TEST_CASE("in their own limit a transition is one of straight strips") {
    for (const double lift : {0.0, 30.0}) {
        const TransitionCase strip = held_between_lines(10, 10 * width, lift);
        const auto ours = solved_strain(strip), strips = strip_strain(strip);
        const double our_mean = mean_over_width(ours), strip_mean = mean_over_width(strips);
        const std::string conditions = lift == 0 ? "10 deg, L = 10 W, flush" : "10 deg, L = 10 W, pulley raised by 30 mm";
        check("edge excess at half distance", straight(strips(width / 2) - strip_mean, conditions), ours(width / 2) - our_mean);
        check("centre excess at half distance", straight(strips(0) - strip_mean, conditions), ours(0) - our_mean);
        const auto curve = [&](const char* name, const std::function<double(double)>& strain, double mean, bool points) {
            Curve drawn{"Strain across a long transition, pulley raised by 30 mm",
                        name,
                        "y, mm",
                        "strain above the mean, 1e-6",
                        {},
                        points};
            for (int y = 0; y <= width / 2; y += 25) drawn.points.emplace_back(y, 1e6 * (strain(y) - mean));
            if (lift > 0) draw(drawn);
        };
        curve("straight strips", strips, strip_mean, true);
        curve("shell", ours, our_mean, false);
    }
}

TEST_CASE("in its own limit a transition of the length of ISO 5293 has the difference in tension that it is meant for") {
    // L = h / sin(a) sqrt(M (1 - cos a) / dT), h the height that the edge rises.
    const double angle = 10 * std::numbers::pi / 180, wing = (width - 475) / 2, difference = 0.1;
    const double h = wing * std::sin(angle), L = h / std::sin(angle) * std::sqrt(modulus * (1 - std::cos(angle)) / difference);
    TransitionCase strip = held_between_lines(10, L, 0);
    strip.layout.trough.junction_radius = 30;
    const auto strain = solved_strain(strip);
    check("edge less centre tension",
          {difference, "N/mm", "ISO 5293:2004, clause 3 (as quoted)", Kind::published_table, "10 deg, L = 8.7 W, flush", 0.02,
           "as straight strips; the arc of 30 mm takes 0.7 % of the wing"},
          modulus * (strain(width / 2) - strain(0)));
}
