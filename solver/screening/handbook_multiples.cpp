#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

using ByAngle = std::array<double, 3>;     // 20, 35, 45 deg
using ByTension = std::array<ByAngle, 3>;  // above 90, 60 to 90, below 60 % of rated
constexpr std::array<double, 3> angles{20, 35, 45};

// CEMA, Belt Conveyors for Bulk Materials, 6th ed., Tables 7.28 (pulley in line with the trough's bottom) and 7.26 (raised by
// half the depth), as quoted by Lemmon 2013, Beltcon 17, B17-02; the same in a trade data sheet but for 0.1. Belt widths. Steel
// cord at 20 deg below 60 % is printed as 2.8; 2.0 fits the half table and the other angles.
constexpr ByTension textile_full{{{1.8, 3.2, 4.0}, {1.6, 2.4, 3.2}, {1.2, 1.8, 2.4}}};
constexpr ByTension textile_half{{{0.9, 1.6, 2.0}, {0.8, 1.3, 1.6}, {0.6, 1.0, 1.3}}};
constexpr ByTension cords_full{{{4.0, 6.8, 8.0}, {3.2, 5.2, 6.4}, {2.0, 3.6, 4.4}}};
constexpr ByTension cords_half{{{2.0, 3.4, 4.0}, {1.6, 2.6, 3.2}, {1.0, 1.8, 2.3}}};

// Excess goes with 1 - cos a, distance with its root: between the angles of the table it is interpolated in that.
double root(double degrees) {
    return std::sqrt(1 - std::cos(degrees * std::numbers::pi / 180));
}

double at_angle(const ByAngle& multiples, double degrees) {
    const int k = degrees < angles[1] ? 0 : 1;
    const double share = (root(degrees) - root(angles[k])) / (root(angles[k + 1]) - root(angles[k]));
    return multiples[k] + share * (multiples[k + 1] - multiples[k]);
}

constexpr const char* misprint =
    ", with 2.0 for the 2.8 that is printed for 20 deg and taken as a misprint: the half-trough table has 1.0";

int band(double share_of_rated) {
    return share_of_rated > 0.9 ? 0 : share_of_rated >= 0.6 ? 1 : 2;
}

}  // namespace

HandMethod handbook_multiple(const ScreeningCase& screening) {
    HandMethod method{
        "handbook multiple",
        {},
        {},
        {},
        "",
        "CEMA, Belt Conveyors for Bulk Materials, 6th ed., Tables 7.26 and 7.28, as quoted by Lemmon 2013, Beltcon 17, "
        "B17-02",
        "troughs of 20 to 45 deg, pulley from flush to raised by half the depth; textile and steel cord"};
    if (!holds_for(screening, 3, 3, method)) return method;
    const TransitionCase& transition = screening.transition;
    const std::optional<double> share = screening.share_of_rated();
    const double degrees = transition.layout.trough.angle * 180 / std::numbers::pi;
    if (!transition.belt.carcass || !share) {
        method.remark = "needs the kind of carcass, the rated tension and a state of a given tension";
        return method;
    }
    if (degrees < angles.front() - 1e-9 || degrees > angles.back() + 1e-9) {
        method.remark = "holds for troughs of 20 to 45 deg";
        return method;
    }
    const bool cords = *transition.belt.carcass == Carcass::steel_cord;
    const ByTension &full = cords ? cords_full : textile_full, &half = cords ? cords_half : textile_half;
    const double raised = std::clamp(transition.layout.pulley.lift / (0.5 * transition.layout.trough_depth()), 0.0, 1.0);
    const int row = band(*share);
    const double multiple = (1 - raised) * at_angle(full[row], degrees) + raised * at_angle(half[row], degrees);
    method.minimum_distance = multiple * transition.layout.belt_width;
    method.remark = fmt::format(
        "{:.2g} belt widths at {:.0f} % of the rated tension{}{}{}; {}", multiple, 100 * *share,
        *share > 1 ? ", beyond the table" : "", raised > 0 && raised < 1 ? ", interpolated between both pulley heights" : "",
        cords && row == 2 && degrees < 35 && raised < 1 ? misprint : "", implied_excess(screening, *method.minimum_distance));
    return method;
}

}  // namespace swale
