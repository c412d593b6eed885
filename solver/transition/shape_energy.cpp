#include "solver/transition/shape_energy.h"

#include "materials/membrane_law.h"
#include "mesh/quadrature.h"
#include "solver/strain/belt_probe.h"

namespace swale {

namespace {

double potential(const GridSolution& solution) {
    const System& system = solution.model.system;
    return solution.model.multiplicity() * system.energy(system.supports().project(solution.points));
}

double unstretched_length(const GridSolution& solution) {
    return solution.model.patch.along.end() - solution.model.patch.along.begin();
}

// dPi/dL = int (W(e) + 1/2 k.M + m g z) dy - T lambda at the far plane, and what bulk adds there [N].
double potential_per_length(const TransitionCase& transition, const TensionState& state, const GridSolution& solution) {
    const Section& section = transition.belt.section;
    const BeltProbe probe(solution.model.patch, solution.points, section);
    double sum = 0;
    for (const LinePoint& place : gauss_rule(solution.model.patch.across, 3).points) {
        const SurfacePoint point = probe.at(probe.end(), place.position);
        const double elastic = membrane_energy(section, point.membrane_strain) + point.curvature.dot(point.moment) / 2;
        const double pull = state.total.value_or(0) / transition.belt.width * (1 + point.strain);
        sum += place.weight * (elastic + section.mass * gravity * point.position.z() - pull);
    }
    if (solution.model.bulk) sum += solution.model.bulk->end_energy;
    return solution.model.multiplicity() * sum;
}

// Bulk presses otherwise on another shape: its work from one to the other is (F + F')/2 . (x' - x) in place of F' . x' - F . x.
double by_other_load(const GridSolution& known, const GridSolution& other) {
    if (!known.model.bulk || !other.model.bulk) return 0;
    const ControlPoints change = other.model.bulk->forces - known.model.bulk->forces;
    return known.model.multiplicity() / 2 * change.cwiseProduct(known.points + other.points).sum();
}

}  // namespace

double energy_difference(const TransitionCase& transition, const TensionState& state, const GridSolution& known,
                         const GridSolution& other) {
    const double longer_by = unstretched_length(other) - unstretched_length(known);
    return potential(other) - potential(known) + by_other_load(known, other) -
           longer_by * potential_per_length(transition, state, known);
}

Separation separation(const GridSolution& known, const GridSolution& other) {
    const Patch &here = known.model.patch, &there = other.model.patch;
    const double ratio = there.along.end() / here.along.end();
    Separation widest;
    for (const LinePoint& along : gauss_rule(here.along, 2).points)
        for (const LinePoint& across : gauss_rule(here.across, 2).points) {
            const double x = along.position, y = across.position;
            const Eigen::Vector3d apart =
                there.jet(other.points, x * ratio, y).position - here.jet(known.points, x, y).position;
            if (apart.norm() > widest.distance) widest = {apart.norm(), x, y};
        }
    return widest;
}

}  // namespace swale
