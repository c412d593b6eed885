#include "benchmarks/campaign/random_case.h"

#include "benchmarks/campaign/random_belt.h"
#include "mesh/idler_series.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale::benchmark {

namespace {

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

std::vector<double> up_to(std::vector<double> values, double least, double most) {
    std::vector<double> chosen;
    for (const double value : values)
        if (value >= least && value <= most) chosen.push_back(value);
    return chosen.empty() ? std::vector<double>{least > values.back() ? values.back() : values.front()} : chosen;
}

Trough random_trough(Draw& draw, double width) {
    Trough trough;
    trough.angle = radians(draw.one_of<double>({20, 20, 25, 27.5, 30, 30, 35, 35, 35, 40, 45, 45}));
    trough.centre_roll = trough.wing_roll = standard_roll_length(width).value();
    trough.roll_gap = 10;
    trough.roll_end_radius = 5;
    const double least = width <= 1000   ? 89
                         : width <= 1400 ? 108
                                         : 133,
                 most = width <= 650    ? 108
                        : width <= 1000 ? 133
                        : width <= 1400 ? 159
                                        : 219;
    trough.roll_diameter = draw.one_of(up_to({89, 108, 133, 159, 194, 219}, least, most));
    trough.spacing = draw.one_of<double>({1000, 1200, 1200, 1350, 1500});
    return trough;
}

// A pulley bends a belt of this thickness: thirty times it at least.
double random_diameter(Draw& draw, const Section& section) {
    return draw.one_of(up_to({250, 315, 400, 500, 630, 800, 1000, 1250, 1400}, 30 * section.thickness, 1400));
}

double random_lift(Draw& draw, double depth) {
    const double kind = draw.uniform(0, 1), share = draw.uniform(0, 1);
    if (kind < 0.35) return 0;
    if (kind < 0.65) return rounded(depth / 2, 1);
    if (kind < 0.85) return rounded(share * depth, 1);
    if (kind < 0.92) return rounded(depth, 1);
    return -rounded(5 + 25 * share, 1);
}

// Clear distance along x of a roll, its top at `lift`, from the pulley.
double clear_of_pulley(const TransitionLayout& layout, double lift) {
    const double roll = layout.trough.roll_diameter / 2, pulley = layout.pulley.diameter / 2;
    const double drop = layout.pulley.lift - pulley - (lift - roll), radii = roll + pulley + 20;
    return std::sqrt(std::max(0.0, radii * radii - drop * drop));
}

double random_distance(Draw& draw, const TransitionLayout& layout, const Belt& belt) {
    const double least = belt.carcass == Carcass::steel_cord ? 1 : 0.5;
    const double distance = rounded(layout.belt_width * draw.log_uniform(least, 5), 10);
    return std::max(distance, rounded(clear_of_pulley(layout, 0) + 10, 10));
}

// Mostly an angle that grows with the distance, else any between the one before and the trough's.
double random_angle(Draw& draw, const TransitionLayout& layout, double at, double before) {
    const double most = layout.trough.angle, even = most * at / layout.distance * draw.uniform(0.7, 1.3);
    const double angle = draw.chance(0.7) ? std::clamp(even, before, most) : draw.uniform(before, most);
    return radians(rounded(angle * 180 / std::numbers::pi, 0.5));
}

void add_stations(Draw& draw, TransitionLayout& layout) {
    const double kind = draw.uniform(0, 1);
    const int wanted = kind < 0.6 ? 0 : kind < 0.88 ? 1 : 2;
    const double clear = layout.trough.roll_diameter + 50;
    double before = 0, angle = 0;
    for (int k = 0; k < wanted; ++k) {
        Station station;
        station.at = rounded(layout.distance * (k + 1 + draw.uniform(-0.3, 0.3)) / (wanted + 1), 10);
        const double least = std::max(clear_of_pulley(layout, layout.lift_of(station)), before + clear);
        if (station.at < least || station.at > layout.distance - clear) continue;
        angle = station.angle = random_angle(draw, layout, station.at, angle);
        before = station.at;
        layout.stations.push_back(station);
    }
}

TransitionLayout random_layout(Draw& draw, const Belt& belt) {
    TransitionLayout layout;
    layout.belt_width = belt.width;
    layout.trough = random_trough(draw, belt.width);
    layout.pulley.end = draw.chance(0.65) ? BeltEnd::tail : BeltEnd::head;
    layout.pulley.grip = draw.chance(0.88) ? Grip::stuck : Grip::sliding;
    layout.pulley.diameter = random_diameter(draw, belt.section);
    layout.pulley.lift = random_lift(draw, layout.trough_depth());
    layout.distance = random_distance(draw, layout, belt);
    add_stations(draw, layout);
    return layout;
}

// From slack (1 N/mm) to rated, mostly the greater first.
std::vector<TensionState> random_states(Draw& draw, const Belt& belt) {
    const double rated = belt.rated_tension.value();
    const double high = std::max(1.0, rated * draw.log_uniform(0.1, 1)), low = draw.log_uniform(std::min(1.0, high), high);
    const auto total = [&](double per_width) { return std::max(10.0, three_digits(per_width * belt.width)); };
    std::vector<TensionState> states{{"high", total(high), {}}, {"low", total(low), {}}};
    if (draw.chance(0.3)) std::swap(states[0], states[1]);
    return states;
}

}  // namespace

TransitionCase random_case(int seed, int index) {
    Draw draw(seed, index);
    TransitionCase transition;
    transition.title = "campaign " + std::to_string(seed) + ", case " + std::to_string(index);
    transition.belt =
        random_belt(draw, draw.one_of<double>({500, 650, 800, 1000, 1200, 1200, 1400, 1600, 1800, 2000, 2200, 2400}));
    transition.layout = random_layout(draw, transition.belt);
    transition.states = random_states(draw, transition.belt);
    if (draw.chance(0.1)) transition.settings.model = Symmetry::full;
    return transition;
}

}  // namespace swale::benchmark
