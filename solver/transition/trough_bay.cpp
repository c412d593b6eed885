#include "solver/transition/trough_bay.h"

#include "materials/gravity.h"
#include "mesh/belt_grid.h"
#include "mesh/trough_profile.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/shell/shell_energy.h"
#include "solver/strain/line_force.h"
#include "solver/strain/readings.h"
#include "solver/strain/support_forces.h"
#include "solver/transition/belt_contacts.h"
#include "solver/transition/end_pull.h"
#include "solver/transition/length_search.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <utility>

namespace swale {

namespace {

const std::string set_name = "set";
constexpr int most_rounds = 8;
constexpr double largest_miss = 0.005;   // of the end from mid-span [mm]
constexpr double largest_misfit = 1e-4;  // of the bulk's forces, as a share

// Neither tilted nor offset, so that its plane is one of symmetry.
IdlerSet full_set_at_zero(const TransitionLayout& layout) {
    return {set_name, 0, layout.trough.angle, 0, Support::rolls, 0, layout.trough.inner_angle};
}

std::vector<BeltContact> bay_contacts(const TransitionCase& transition, const TroughBay& bay) {
    return set_contacts(transition, bay.state, bay.patch, bay.scale, full_set_at_zero(transition.layout));
}

void add_terms(const TransitionCase& transition, const TroughBay& bay, System& system) {
    const Patch& patch = bay.patch;
    const Section& section = transition.belt.section;
    system.add(std::make_shared<ShellEnergy>(patch, section, NaturalCurvature{}, bay.gauss_points));
    system.add(std::make_shared<DeadLoad>(area_load(patch, {0, 0, -section.mass * gravity})), TermKind::load);
    if (bay.bulk) system.add(std::make_shared<DeadLoad>(bay.bulk->forces), TermKind::load);
    for (const BeltContact& contact : bay_contacts(transition, bay)) system.add(contact.energy, TermKind::contact);
}

// One try at a scale, under the bulk that `start` asks for.
void solve_at(const TransitionCase& transition, const ControlPoints& start, TroughBay& bay, NewtonTimes& times,
              double tolerance = NewtonSettings{}.tolerance) {
    bay.bulk = bay_bulk(transition, bay.state, bay.patch, bay.scale, start);
    System system(bay.patch, bay_supports(bay.patch, SetPlane::symmetric, Parity::symmetric, false));
    add_terms(transition, bay, system);
    system.add(end_pull(bay.patch, bay.state.total.value()), TermKind::load);
    NewtonSettings settings;
    settings.iterations = transition.settings.newton_iterations;
    settings.tolerance = tolerance;
    bay.outcome = minimise(system, system.supports().project(start), settings, {}, &times);
    bay.points = system.supports().expand(bay.outcome.q);
}

using BayStart = std::function<ControlPoints(const Patch&)>;

double misfit(const TransitionCase& transition, const TroughBay& bay) {
    return bulk_misfit(bay.bulk, bay_bulk(transition, bay.state, bay.patch, bay.scale, bay.points));
}

void take_gradient(const TransitionCase& transition, TroughBay& bay) {
    bay.gradient = free_bay(transition, bay, SetPlane::symmetric, Parity::symmetric).full_gradient(bay.points);
}

// At the scale of `bay`, then at scales that bring its end to mid-span and under the bulk as it then lies.
TroughBay solve_from(const TransitionCase& transition, const Patch& half_bay, TroughBay bay, const BayStart& start,
                     NewtonTimes& times) {
    const double mid_span = half_bay.along.end();
    LengthSearch search;
    for (int round = 1;; ++round) {
        bay.patch = {half_bay.along.scaled(bay.scale), half_bay.across};
        solve_at(transition, round == 1 ? start(bay.patch) : bay.points, bay, times);
        const double end = bay.points(0, bay.patch.index(bay.patch.along.size() - 1, 0)), miss = end - mid_span;
        const bool missed = std::abs(miss) >= largest_miss;
        if (!bay.outcome.converged || round == most_rounds || !(missed || misfit(transition, bay) > largest_misfit)) break;
        if (missed) bay.scale = search.next(bay.scale, miss, end);
    }
    take_gradient(transition, bay);
    return bay;
}

}  // namespace

Patch half_bay_of(const TransitionLayout& layout, const Patch& patch_in_space, int sets) {
    const double set = path_length(layout, sets) - 0.5 * layout.trough.spacing;
    std::vector<double> breaks{0};
    for (const double x : patch_in_space.along.breaks())
        if (x > set + 1e-3) breaks.push_back(x - set);
    return {CubicBasis(std::move(breaks)), patch_in_space.across};
}

TroughBay solve_trough_bay(const TransitionCase& transition, const TensionState& state, const Patch& half_bay, double scale,
                           int gauss_points, NewtonTimes& times) {
    const TroughProfile profile = held_profile(transition.layout, transition.belt.section.underside);
    const auto laid = [&](const Patch& patch) {
        return patch.follow([&](double x, double y) {
            const Eigen::Vector2d place = profile.at(y);
            return Eigen::Vector3d(x / scale, place.x(), place.y());
        });
    };
    return solve_from(transition, half_bay, {state, half_bay, scale, gauss_points, {}, {}, {}}, laid, times);
}

TroughBay solve_trough_bay(const TransitionCase& transition, const Patch& half_bay, const TroughBay& known,
                           NewtonTimes& times) {
    const auto as_known = [&](const Patch& patch) {
        return patch.interpolate([&](double x, double y) { return known.patch.jet(known.points, x, y).position; });
    };
    return solve_from(transition, half_bay, known, as_known, times);
}

TroughBay same_bay(const TransitionCase& transition, const TensionState& state, const TroughBay& known, NewtonTimes& times) {
    TroughBay bay = known;
    bay.state = state;
    solve_at(transition, known.points, bay, times, 1e-11);
    take_gradient(transition, bay);
    return bay;
}

// The bay's plane of symmetry halves the rolls; along the belt both halves of a roll's force cancel.
std::map<std::string, double> running_roll_forces(const TransitionCase& transition, const TroughBay& bay) {
    std::map<std::string, double> forces;
    for (const BeltContact& contact : bay_contacts(transition, bay)) {
        Eigen::Vector3d half = roll_force(contact, bay.patch.across.begin() == 0, bay.points);
        half.x() = 0;
        for (const std::string& name : {contact.name, contact.mirror})
            if (!name.empty()) forces[name.substr(set_name.size() + 1)] = 2 * half.norm();
    }
    return forces;
}

RunningTrough running_trough(const TransitionCase& transition, const TroughBay& bay) {
    const Section& section = transition.belt.section;
    RunningTrough running;
    running.junction_bending_strain = junction_bending_strain(transition, bay).value;
    running.roll_forces = running_roll_forces(transition, bay);
    const LineForceResolution resolution{boundary_layers(section).across, section.underside};
    for (const BeltContact& contact : bay_contacts(transition, bay)) {
        if (contact.place != RollPlace::wing) continue;
        const double half_line = largest_line_force(contact.energy->line_force(bay.points), bay.patch.across, resolution).force;
        running.wing_line_force = std::max(running.wing_line_force, 2 * half_line);
    }
    return running;
}

System free_bay(const TransitionCase& transition, const TroughBay& bay, SetPlane plane, Parity parity) {
    System system(bay.patch, bay_supports(bay.patch, plane, parity, true));
    add_terms(transition, bay, system);
    return system;
}

}  // namespace swale
