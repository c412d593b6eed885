#include "solver/transition/other_equilibria.h"

#include "solver/transition/cold_start.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/stability_of_belt.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace swale {

namespace {

constexpr double same_place = 0.5;    // [mm]
constexpr double same_strain = 0.01;  // of the edge strain

struct NamedStart {
    std::string name;
    GridStart start;
    double scale;
};

// Height added to the ruled surface at x in space and y.
using Lift = std::function<double(double x, double y)>;

// `waves` half waves between pulley and first full set, fading towards both, in a strip about the centre line.
Lift waved(const TransitionLayout& layout, int waves, double height, double half_width) {
    return [=, distance = layout.distance](double x, double y) {
        if (x <= 0 || x >= distance) return 0.0;
        const double turn = std::numbers::pi * x / distance, aside = y / half_width;
        return height * std::sin(turn) * std::sin(waves * turn) * std::exp(-aside * aside);
    };
}

// One edge up, the other down.
Lift tipped(const TransitionLayout& layout, double height) {
    return [=, distance = layout.distance, width = layout.belt_width](double x, double y) {
        if (x <= 0 || x >= distance) return 0.0;
        return height * std::sin(std::numbers::pi * x / distance) * 2 * y / width;
    };
}

GridStart lifted(const GridTask& task, const Lift& lift) {
    return [ruled = ruled_start(task), scale = task.scale, lift](const Patch& patch) {
        return ControlPoints(ruled(patch) +
                             patch.follow([&](double x, double y) { return Eigen::Vector3d(0, 0, lift(x / scale, y)); }));
    };
}

// Whether the centre half way to the first full set hangs below the ruled surface, which is straight there.
bool sags(const GridTask& task, const GridSolution& known) {
    const double x = task.transition.layout.distance / 2 * known.model.scale;
    const Patch& patch = known.model.patch;
    const double ruled = patch.jet(ruled_start(task)(patch), x, 0).position.z();
    return patch.jet(known.points, x, 0).position.z() < ruled;
}

// In the order of promise; heights as shares of the width.
std::vector<NamedStart> other_starts(const GridTask& task, const GridSolution& known) {
    const TransitionLayout& layout = task.transition.layout;
    const double width = layout.belt_width;
    const double bulge = (sags(task, known) ? 0.06 : -0.06) * width, ripple = 0.02 * width;
    const auto from = [&](std::string name, const Lift& lift) {
        return NamedStart{std::move(name), lifted(task, lift), task.scale};
    };
    GridTask unstretched = task;
    unstretched.scale = 1;
    std::vector<NamedStart> starts;
    if (!known.model.half) starts.push_back(from("tipped", tipped(layout, 0.06 * width)));
    starts.push_back(from("bulged the other way", waved(layout, 1, bulge, width / 3)));
    starts.push_back({"without pre-stretch", ruled_start(unstretched), 1});
    for (const auto& [name, waves, height] : {std::tuple{"a wave up", 1, ripple},
                                              {"a wave down", 1, -ripple},
                                              {"two waves up and down", 2, ripple},
                                              {"two waves down and up", 2, -ripple},
                                              {"three waves", 3, ripple}})
        starts.push_back(from(name, waved(layout, waves, height, width / 6)));
    starts.push_back(from("the ruled surface", waved(layout, 1, 0, width)));
    return starts;
}

bool same(const GridSolution& one, const Readings& its, const GridSolution& other, const Readings& others) {
    const double strain = its.edge_strain_max.value;
    return separation(one, other).distance <= same_place &&
           std::abs(others.edge_strain_max.value - strain) <= same_strain * std::abs(strain);
}

void compare(const GridTask& task, const GridSolution& known, OtherSolution& other) {
    other.energy_difference = energy_difference(task.transition, task.state, known, other.solution);
    other.apart = separation(known, other.solution);
}

}  // namespace

bool slack(const Readings& readings) {
    return readings.tension_min.value < 0;
}

std::vector<OtherSolution> other_equilibria(const GridTask& task, const GridSolution& known, int starts,
                                            const NewtonWatcher& watcher, NewtonTimes& times) {
    const Readings of_known = readings_of(task.transition, known);
    std::vector<OtherSolution> others;
    for (const NamedStart& start : other_starts(task, known)) {
        if (starts-- <= 0) break;
        GridTask from_here = task;
        from_here.scale = start.scale;
        from_here.known_trough = known.model.beyond;
        GridSolution solution = solve_grid(from_here, start.start, watcher, times);
        if (!solution.converged) continue;
        const Readings readings = readings_of(task.transition, solution);
        const auto met = [&](const OtherSolution& other) { return same(other.solution, other.readings, solution, readings); };
        if (same(known, of_known, solution, readings) || std::any_of(others.begin(), others.end(), met)) continue;
        others.push_back({start.name, std::move(solution), readings, 0, {}});
        compare(task, known, others.back());
    }
    return others;
}

void put_lowest_first(const GridTask& task, GridSolution& known, std::vector<OtherSolution>& others) {
    const auto lowest = std::ranges::min_element(others, {}, &OtherSolution::energy_difference);
    if (lowest == others.end() || lowest->energy_difference >= 0) return;
    lowest->start = "from the usual start";
    std::swap(known, lowest->solution);
    lowest->readings = readings_of(task.transition, lowest->solution);
    for (OtherSolution& other : others) compare(task, known, other);
}

OtherEquilibrium reported(const TransitionCase& transition, const TensionState& state, const OtherSolution& other) {
    const BeltModel& model = other.solution.model;
    const BeltStability lowest = stability_of_belt(transition, state, model, other.solution.points);
    return {other.readings,
            other.start,
            other.energy_difference,
            other.apart.distance,
            other.apart.x,
            other.apart.y,
            lowest.symmetric,
            lowest.antisymmetric,
            {model.patch.along.knots(), model.patch.across.knots(), other.solution.points}};
}

}  // namespace swale
