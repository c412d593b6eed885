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

// Straight strips from the pulley line to the trough: what every hand method assumes. The shell does the same in their limit:
// no bending stiffness, a small trough angle, strips that don't hold each other (A66 and A22 next to nothing). A shell that
// shears as a belt does stays near them in a long flush transition, where each wing's mean shear vanishes. It does not behind a
// raised pulley: straight strips there would shear the wings by h sin(a)/(2 L) on average, which no displacement with both ends
// held takes away.

using namespace swale;
using namespace swale::verification;

namespace {

constexpr double width = 1200, modulus = 8000, mean_strain = 1e-3;

// `coupling`: A66 and A22, what the strips hold each other with.
TransitionCase held_between_lines(double angle, double distance, double lift, double coupling) {
    TransitionCase strip;
    strip.belt.width = strip.layout.belt_width = width;
    Section& section = strip.belt.section;
    section.thickness = 10;
    section.underside = 5;
    section.membrane = orthotropic(modulus, coupling, 0, coupling);
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

Reference straight(double value, double tolerance, const std::string& conditions, const char* why) {
    return {value,
            "-",
            "straight strips, derived here: |offset|^2 / (2 L^2)",
            Kind::closed_form,
            conditions + ", 10 deg, L = 10 W",
            tolerance,
            why};
}

Curve across(const char* name, const std::function<double(double)>& strain, bool points) {
    Curve curve{
        "Strain across half way, pulley raised by half the depth", name, "y, mm", "strain above the centre, 1e-6", {}, points};
    for (int y = 0; y <= width / 2; y += 25) curve.points.emplace_back(y, 1e6 * (strain(y) - strain(0)));
    return curve;
}

}  // namespace

TEST_CASE("strips that do not hold each other are straight strips") {
    constexpr double next_to_nothing = 0.02;
    for (const double lift : {0.0, 30.0}) {
        const TransitionCase strip = held_between_lines(10, 10 * width, lift, next_to_nothing);
        const auto ours = solved_strain(strip), strips = strip_strain(strip);
        const std::string conditions = lift == 0 ? "flush" : "pulley raised by 30 mm";
        const char* why = "a tension of 8 N/mm spreads A22 of 0.02 N/mm over 7 m of the 12: the strips are not quite straight";
        check("edge less lowest strain", straight(strips(600) - strips(lift == 0 ? 0 : 450), 0.03, conditions, why),
              ours(600) - ours(lift == 0 ? 0 : 450));
        if (lift == 0) continue;
        check("centre less lowest strain", straight(strips(0) - strips(450), 0.03, conditions, why), ours(0) - ours(450));
        draw(across("straight strips", strips, true));
        draw(across("shell of strips that do not hold each other", ours, false));
        draw(across("shell that shears as a belt, A66 = A11/16", solved_strain(held_between_lines(10, 10 * width, lift, 500)),
                    false));
    }
}

TEST_CASE("half way in a long flush transition a shell strains like straight strips") {
    const TransitionCase strip = held_between_lines(10, 10 * width, 0, 4000);
    const auto ours = solved_strain(strip), strips = strip_strain(strip);
    const double our_mean = mean_over_width(ours), strip_mean = mean_over_width(strips);
    const char* why = "shear lag from both held lines, W sqrt(A11/A66)/(2 pi) = 0.2 W, and slopes of the wings";
    check("edge excess over the mean", straight(strips(600) - strip_mean, 0.03, "flush, A66 = A11/2", why),
          ours(600) - our_mean);
    check("centre excess over the mean", straight(strips(0) - strip_mean, 0.03, "flush, A66 = A11/2", why), ours(0) - our_mean);
}

TEST_CASE("a long flush transition of the length of ISO 5293 has the difference in tension that it is meant for") {
    // L = h / sin(a) sqrt(M (1 - cos a) / dT), h the height that the edge rises.
    const double angle = 10 * std::numbers::pi / 180, wing = (width - 475) / 2, difference = 0.1;
    const double h = wing * std::sin(angle), L = h / std::sin(angle) * std::sqrt(modulus * (1 - std::cos(angle)) / difference);
    TransitionCase strip = held_between_lines(10, L, 0, 4000);
    strip.layout.trough.junction_radius = 30;
    const auto strain = solved_strain(strip);
    check("edge less centre tension",
          {difference, "N/mm", "ISO 5293:2004, clause 3 (as quoted)", Kind::published_table,
           "10 deg, L = 10.5 W, flush, A66 = A11/2", 0.03, "as straight strips; the arc of 30 mm takes 0.7 % of the wing"},
          modulus * (strain(width / 2) - strain(0)));
}
