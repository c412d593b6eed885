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

double trough_degrees(const TransitionCase& transition) {
    return transition.layout.trough.angle * 180 / std::numbers::pi;
}

// Why the tables can't be read; empty if they can.
std::string why_not(const ScreeningCase& screening) {
    if (!screening.transition.belt.carcass || !screening.share_of_rated())
        return "needs the kind of carcass, the rated tension and a state of a given tension";
    const double degrees = trough_degrees(screening.transition);
    if (degrees < angles.front() - 1e-9 || degrees > angles.back() + 1e-9) return "holds for troughs of 20 to 45 deg";
    return "";
}

/// A place in the tables.
struct Cell {
    bool cords = false;
    int row = 0;         ///< of the tension
    double degrees = 0;  ///< of the trough
    double raised = 0;   ///< the pulley, as a share of half the trough's depth, at most 1
};

Cell cell_of(const ScreeningCase& screening) {
    const TransitionCase& transition = screening.transition;
    return {counts_as_cords(*transition.belt.carcass), band(*screening.share_of_rated()), trough_degrees(transition),
            std::clamp(transition.layout.pulley.lift / (0.5 * transition.layout.trough_depth()), 0.0, 1.0)};
}

double multiple_at(const Cell& cell) {
    const ByTension &full = cell.cords ? cords_full : textile_full, &half = cell.cords ? cords_half : textile_half;
    return (1 - cell.raised) * at_angle(full[cell.row], cell.degrees) + cell.raised * at_angle(half[cell.row], cell.degrees);
}

std::string remark_on(const Cell& cell, double multiple, double share_of_rated) {
    return fmt::format("{:.2g} belt widths at {:.0f} % of the rated tension{}{}{}", multiple, 100 * share_of_rated,
                       share_of_rated > 1 ? ", beyond the table" : "",
                       cell.raised > 0 && cell.raised < 1 ? ", interpolated between both pulley heights" : "",
                       cell.cords && cell.row == 2 && cell.degrees < 35 && cell.raised < 1 ? misprint : "");
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
    method.remark = why_not(screening);
    if (!method.remark.empty()) return method;
    const Cell cell = cell_of(screening);
    const double multiple = multiple_at(cell);
    method.minimum_distance = multiple * screening.transition.layout.belt_width;
    method.remark = remark_on(cell, multiple, *screening.share_of_rated()) + "; " +
                    implied_excess(screening, *method.minimum_distance) + carcass_remark(*screening.transition.belt.carcass);
    return method;
}

}  // namespace swale
